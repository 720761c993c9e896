"""The one factory of the service: settings, curricula, operations and pages, wired together."""

from __future__ import annotations

from typing import TYPE_CHECKING

from flask import Flask

from ionwright.api.answers import AnswerStore
from ionwright.api.balancing_desk import BalancingDesk
from ionwright.api.comparison_desk import ComparisonDesk
from ionwright.api.converters import CurriculumConverter
from ionwright.api.demonstration_desk import DemonstrationDesk
from ionwright.api.document import new_document_maker
from ionwright.api.failures import register_failures
from ionwright.api.front import LONGEST_IN_FRONT, PlainRequestsInFront
from ionwright.api.kept_answers import KeptAnswers
from ionwright.api.marking_desk import MarkingDesk
from ionwright.api.pages import pages_blueprint
from ionwright.api.predictor import Predictor
from ionwright.api.quantities_desk import QuantitiesDesk
from ionwright.api.resources.batches import add_batches
from ionwright.api.resources.comparisons import comparisons_blueprint
from ionwright.api.resources.curricula import curricula_blueprint
from ionwright.api.resources.demonstrations import demonstrations_blueprint
from ionwright.api.resources.half_equation_checks import half_equation_checks_blueprint
from ionwright.api.resources.half_equations import half_equations_blueprint
from ionwright.api.resources.health import health_blueprint
from ionwright.api.resources.pick_lists import pick_lists_blueprint
from ionwright.api.resources.predictions import predictions_blueprint
from ionwright.api.resources.quantities import quantities_blueprint
from ionwright.api.settings import Settings
from ionwright.curricula.host import Registry, load_curricula

if TYPE_CHECKING:
    from collections.abc import Iterable

    from ionwright.api.operations import Blueprint


def create_app(settings: Settings | None = None, registry: Registry | None = None) -> Flask:
    """WSGI application of the service.

    Parameters
    ----------
    settings
        Settings of this process; those of the environment if left out.
    registry
        The curricula; loaded as the settings say if left out.

    Raises
    ------
    SettingFault
        An environment variable cannot be used.
    """
    settings = settings or Settings.from_environment()
    if registry is None:
        registry = load_curricula(settings.curricula_folder, settings.without)
    app = Flask("ionwright.api", static_folder=None, template_folder="pages/templates")
    app.url_map.merge_slashes = False
    app.url_map.converters["curriculum"] = CurriculumConverter
    register_failures(app)
    maker = new_document_maker(app)
    predictor = Predictor(registry, AnswerStore(entries=settings.cache_entries, size=settings.cache_bytes))
    quantities = QuantitiesDesk(registry, KeptAnswers("quantities", predictor.store))
    for blueprint in _blueprints(settings, predictor, quantities):
        maker.register_blueprint(blueprint)
    app.register_blueprint(pages_blueprint())
    longest = min(LONGEST_IN_FRONT, settings.body_limit)
    in_front = {"/v1/predictions": predictor.answer_body, "/v1/quantities": quantities.answer_body}
    front = PlainRequestsInFront(app.wsgi_app, in_front, longest=longest)
    app.wsgi_app = front  # type: ignore[method-assign]  # Flask's own way to put something in front
    return app


def _blueprints(settings: Settings, predictor: Predictor, quantities: QuantitiesDesk) -> Iterable[Blueprint]:
    predictions = predictions_blueprint(predictor, settings)
    add_batches(predictions, predictor, settings)
    registry = predictor.registry
    kept = {
        name: KeptAnswers(name, predictor.store)
        for name in ("comparisons", "disagreements", "demonstrations")
    }
    return (
        predictions,
        half_equations_blueprint(BalancingDesk(predictor.store), settings),
        half_equation_checks_blueprint(MarkingDesk(registry), settings),
        quantities_blueprint(quantities, settings),
        comparisons_blueprint(ComparisonDesk(registry, kept["comparisons"], kept["disagreements"]), settings),
        demonstrations_blueprint(DemonstrationDesk(registry, kept["demonstrations"]), settings),
        curricula_blueprint(registry, settings),
        pick_lists_blueprint(),
        health_blueprint(registry),
    )
