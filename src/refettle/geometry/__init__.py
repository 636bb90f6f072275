"""From a form with sizes to parts and surfaces with exact exposed areas, volume and centre of gravity."""

from refettle.geometry.form import Built, Face, Form
from refettle.geometry.forms import FORMS, build_form, find_form
from refettle.geometry.parameters import Parameter, Problem
from refettle.geometry.zones import usual_zones

__all__ = ["FORMS", "Built", "Face", "Form", "Parameter", "Problem", "build_form", "find_form", "usual_zones"]
