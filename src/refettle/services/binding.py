"""The person's own tins bound to behaviour classes: a label figure that differs makes a class of its own."""

from dataclasses import replace

from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge, label_class


def bind_products(know: Knowledge, workshop: Workshop) -> tuple[Knowledge, Workshop]:
    """
    Return the facts with a class for every tin whose label says otherwise, and the workshop that uses them.

    Parameters
    ----------
    know
        All facts.
    workshop
        Tins with the class they belong to and their label figures.

    Returns
    -------
    tuple
        Facts and workshop. A tin without label figures stays with its class: the search knows classes,
        never tins, and a price does not make a class.
    """
    tins = []
    for tin in workshop.products:
        if not tin.label:
            tins.append(tin)
            continue
        know = know.with_label(tin.cls, tin.label, tin.name)
        tins.append(replace(tin, cls=label_class(tin.cls, tin.name), label=()))
    return know, replace(workshop, products=tuple(tins))
