"""Teaching: everything a teacher says about a cell."""

from ionwright.chemistry.cell import CellDescription
from ionwright.chemistry.electrolyte import Ingredient
from ionwright.teaching.document import prediction_document
from ionwright.teaching.prediction import Prediction, predict, predict_afresh

__all__ = ["CellDescription", "Ingredient", "Prediction", "predict", "predict_afresh", "prediction_document"]
