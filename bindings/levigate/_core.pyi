__version__: str

class Error(ValueError):
    code: int

class UnknownGrade(Error): ...
class AmbiguousLabel(Error): ...
class OutOfRange(Error): ...

class BadInput(Error):
    pointer: str
    line: int

class NoPlan(Error): ...
