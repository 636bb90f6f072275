"""One shopping list for several pieces, as JSON; ``buy.schema.json`` describes every name."""

from refettle.cli.json_parts import SCHEMA_VERSION, Document, finding_json, range_json, rounded, written
from refettle.domain.finding import Finding
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.services.buy_many import Bought, ShoppingList


def buy_json(
    pieces: tuple[str, ...],
    shopping: ShoppingList,
    workshop: Workshop,
    know: Knowledge,
    findings: tuple[Finding, ...],
) -> str:
    """
    Return a shopping list as a JSON document.

    Parameters
    ----------
    pieces
        Names of the pieces.
    shopping
        The list.
    workshop
        Its name and currency.
    know
        Version of the facts.
    findings
        Problems in the files.

    Returns
    -------
    str
        Valid against ``buy.schema.json``.
    """
    return written(
        {
            "schema_version": SCHEMA_VERSION,
            "knowledge_version": know.version,
            "pieces": list(pieces),
            "workshop": workshop.name,
            "currency": workshop.currency,
            "items": [_item(item) for item in shopping.items],
            "money": range_json(shopping.money),
            "gear_money": range_json(shopping.gear_money),
            "money_apart": range_json(shopping.apart),
            "left_out": [{"piece": piece, "group": group} for piece, group in shopping.left_out],
            "disposal": {
                "text": " ".join(waste.text for waste in shopping.disposal),
                "source": "common-practice",
                "lines": [{"id": w.id, "text": w.text, "source": w.source} for w in shopping.disposal],
            },
            "findings": [finding_json(finding) for finding in findings],
        }
    )


def _item(item: Bought) -> Document:
    """Return one material."""
    purchase = item.purchase
    return {
        "kind": purchase.kind,
        "id": purchase.cls,
        "name": purchase.name,
        "need_l": range_json(purchase.need_l),
        "have_l": rounded(purchase.have_l),
        "bought_l": rounded(purchase.bought_l),
        "need_count": range_json(purchase.need_count),
        "have_count": rounded(purchase.have_count),
        "bought_count": rounded(purchase.bought_count),
        "buy": purchase.buy,
        "money": range_json(purchase.money),
        "left_l": range_json(item.left_l),
        "left_count": range_json(item.left_count),
        "pieces": [
            {
                "piece": share.piece,
                "need_l": range_json(share.need_l),
                "need_count": range_json(share.need_count),
                "money_alone": range_json(share.money),
            }
            for share in item.shares
        ],
        "because": list(purchase.because),
    }
