"""Style sheet: how Qt's controls are drawn; hairlines, one radius, a grid of 4 px."""

from boardplan.bundled import data_dir
from boardplan.drawing.palette import Theme, colour

_SHEET = """
* { font-family: "Atkinson Hyperlegible Next"; font-size: 13px; }
QMainWindow, QDialog, #ground { background: @ground; }
QToolTip { background: @ink; color: @ground; border: 0; padding: 4px 8px; }

QMenuBar { background: @ground; padding: 2px 8px; }
QMenuBar::item { padding: 4px 8px; border-radius: 6px; background: transparent; }
QMenuBar::item:selected { background: @line; }
QMenu { background: @panel; border: 1px solid @line; padding: 4px; }
QMenu::item { padding: 5px 24px 5px 8px; border-radius: 4px; }
QMenu::item:selected { background: @wash; color: @ink; }
QMenu::item:disabled { color: @quiet; }
QMenu::separator { height: 1px; background: @line; margin: 4px 8px; }
QMenu::icon { padding-left: 8px; }

QLabel[part="title"] { font-size: 22px; font-weight: 600; }
QLabel[part="heading"] { font-size: 16px; font-weight: 600; }
QLabel[part="section"] { font-size: 13px; font-weight: 600; }
QLabel[part="quiet"] { color: @quiet; }
QLabel[part="small"] { color: @quiet; font-size: 11px; }
QLabel[part="unit"] { color: @quiet; }
QLabel[part="fault"] { color: @stop; font-size: 11px; }
QFrame[part="line"] { background: @line; border: 0; max-height: 1px; min-height: 1px; }
QFrame[part="upright"] { background: @line; border: 0; max-width: 1px; min-width: 1px; }
#panel, #panel QScrollArea, #panel QScrollArea > QWidget > QWidget { background: @panel; }
#strip { background: @ground; }

QPushButton { background: transparent; border: 1px solid @edge; border-radius: 6px; padding: 5px 12px;
  min-height: 18px; outline: 0; }
QPushButton:hover { border-color: @accent; }
QPushButton:pressed { background: @wash; }
QPushButton:focus { border: 2px solid @accent; padding: 4px 11px; }
QPushButton:default, QPushButton[part="main"] { background: @accent; color: @panel; border: 1px solid @accent;
  font-weight: 600; }
QPushButton:default:hover, QPushButton[part="main"]:hover { background: @accent-deep; }
QPushButton[part="recent"] { border: 0; padding: 4px 0; color: @accent; }
QPushButton[part="recent"]:focus { border-bottom: 2px solid @accent; padding: 4px 0 2px 0; }
QPushButton[part="leaf"] { border: 0; border-radius: 0; border-bottom: 2px solid transparent; padding: 5px 0 5px 0;
  color: @quiet; font-weight: 600; }
QPushButton[part="leaf"]:hover { color: @ink; }
QPushButton[part="leaf"]:checked { color: @ink; border-bottom: 2px solid @accent; }
QPushButton[part="leaf"]:focus { color: @accent; padding: 5px 0 5px 0; }
QPushButton:default:focus, QPushButton[part="main"]:focus { border: 2px solid @ink; }
QPushButton:disabled, QPushButton[part="main"]:disabled { background: transparent; color: @quiet;
  border: 1px solid @line; }
QDialogButtonBox { dialogbuttonbox-buttons-have-icons: 0; }
QToolButton { background: transparent; border: 1px solid transparent; border-radius: 6px; padding: 3px; }
QToolButton:hover { background: @hover; }
QToolButton:pressed { background: @wash; }
QToolButton:checked { background: @wash; color: @accent; }
QToolButton:focus { border: 1px solid @accent; }
QToolButton[part="fold"]:checked { background: transparent; color: @ink; }
QToolButton[part="fold"]:hover { background: @hover; }
QToolButton[part="row"] { text-align: left; padding: 4px 8px; }
QToolButton[part="fold"] { font-weight: 600; padding: 2px 4px; text-align: left; }
QToolButton::menu-indicator { image: none; width: 0; }

QLineEdit, QComboBox, QPlainTextEdit {
  background: @field; border: 1px solid @edge; border-radius: 6px; padding: 3px 8px; min-height: 20px;
  selection-background-color: @accent; selection-color: @panel; }
QLineEdit:hover, QComboBox:hover { border-color: @quiet; }
QLineEdit:focus, QComboBox:focus, QPlainTextEdit:focus { border: 2px solid @accent; padding: 2px 7px; }
QLineEdit[faulty="true"] { border: 2px solid @stop; padding: 2px 7px; }
QLineEdit:disabled, QComboBox:disabled { color: @quiet; background: transparent; border-color: @line; }
QComboBox { padding-right: 4px; }
QComboBox::drop-down { border: 0; width: 22px; subcontrol-origin: padding; subcontrol-position: center right; }
QComboBox::down-arrow { image: url("@icons/choice-arrow.svg"); width: 12px; height: 12px; }
QComboBox QAbstractItemView { background: @panel; border: 1px solid @line; selection-background-color: @wash;
  selection-color: @ink; outline: 0; padding: 4px; }
QComboBox QAbstractItemView::item { min-height: 24px; }
QCheckBox { spacing: 8px; padding: 2px; border: 1px solid transparent; border-radius: 6px; }
QCheckBox::indicator { width: 14px; height: 14px; border: 1px solid @edge; border-radius: 4px; background: @field; }
QCheckBox::indicator:checked { background: @accent; border-color: @accent;
  image: url("@icons/choice-check-@theme.svg"); }
QCheckBox:focus { border: 1px solid @accent; }

QListView { background: transparent; border: 1px solid transparent; border-radius: 6px; outline: 0; }
QListView:focus { border: 1px solid @accent; }
QScrollArea { border: 0; background: transparent; }
QScrollBar:vertical { background: transparent; width: 10px; margin: 2px; }
QScrollBar:horizontal { background: transparent; height: 10px; margin: 2px; }
QScrollBar::handle { background: @edge; border-radius: 3px; min-height: 24px; min-width: 24px; }
QScrollBar::handle:hover { background: @quiet; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }
QSplitter::handle { background: @line; }
QSplitter::handle:vertical { height: 1px; }
QProgressBar { border: 0; background: @line; border-radius: 2px; max-height: 4px; min-height: 4px; }
QProgressBar::chunk { background: @accent; border-radius: 2px; }
QGraphicsView { border: 1px solid @line; }
QGraphicsView:focus { border: 1px solid @accent; }
"""


def mixed(one: str, other: str, share: float) -> str:
    """Return a colour between two, `share` of the way from one to the other."""
    mine, yours = (tuple(int(each[at : at + 2], 16) for at in (1, 3, 5)) for each in (one, other))
    return "#" + "".join(f"{round(a + (b - a) * share):02x}" for a, b in zip(mine, yours, strict=True))


def interface_colours(theme: Theme) -> dict[str, str]:
    """Return the colours of controls: those of the palette, and the few that are mixed from them."""
    inks = {ink: colour(ink, theme) for ink in ("ground", "panel", "ink", "quiet", "line", "accent", "stop")}
    inks["wash"] = mixed(inks["panel"], inks["accent"], 0.16)
    inks["hover"] = mixed(inks["ground"], inks["ink"], 0.07)
    inks["edge"] = mixed(inks["line"], inks["ink"], 0.28)
    inks["field"] = mixed(inks["panel"], "#ffffff", 0.5) if theme == "light" else mixed(inks["panel"], "#000000", 0.22)
    inks["accent-deep"] = mixed(inks["accent"], inks["ink"], 0.18)
    return inks


def style_sheet(theme: Theme) -> str:
    """Return the style sheet for a theme."""
    text = _SHEET.replace("@icons", (data_dir("assets") / "icons").as_posix()).replace("@theme", theme)
    for ink, value in sorted(interface_colours(theme).items(), key=lambda each: -len(each[0])):
        text = text.replace(f"@{ink}", value)
    return text
