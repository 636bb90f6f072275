"""A tin whose label says otherwise becomes a class of its own, and the plan can use it."""

from refettle.domain.piece import Product
from refettle.domain.workshop import Workshop
from refettle.files.tables import load_knowledge
from refettle.services.binding import bind_products

TIN = Product(
    name="Quick satin clear", cls="waterborne-polyurethane", have_l=1.0, label=(("recoat_from_h", 1.0),)
)


def test_a_label_figure_makes_a_class_that_differs_in_that_figure_alone() -> None:
    know = load_knowledge()
    more, workshop = bind_products(know, Workshop(products=(TIN,)))
    bound = workshop.products[0]
    own, usual = more.film(bound.cls), know.film("waterborne-polyurethane")
    assert bound.cls != TIN.cls
    assert own.recoat_from_h == 1.0 != usual.recoat_from_h
    assert (own.grip, own.wet_um, own.role) == (usual.grip, usual.wet_um, usual.role)
    assert own.name == "Quick satin clear"


def test_a_tin_without_label_figures_stays_with_its_class() -> None:
    know = load_knowledge()
    plain = Product(name="Clear", cls="waterborne-polyurethane", price=20.0)
    more, workshop = bind_products(know, Workshop(products=(plain,)))
    assert more is know
    assert workshop.products == (plain,)
