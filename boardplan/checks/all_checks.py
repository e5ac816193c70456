"""All checks: the one table of what is asked about a plan."""

from boardplan.checks.bending_space import bending_space_short, gland_room_short
from boardplan.checks.board_fixings import (
    fixing_head_blocked,
    fixing_misses_framing,
    fixing_under_cable,
    framing_unknown,
)
from boardplan.checks.boards_apart import boards_overlap
from boardplan.checks.bodies_apart import bodies_apart
from boardplan.checks.cable_bends import bend_at_lug, bends_have_room
from boardplan.checks.cable_lengths import (
    jumper_too_short,
    lead_not_in_stock,
    leg_estimated,
    lug_not_measured,
    matched_surplus,
)
from boardplan.checks.cable_supports import battery_cable_unsupported, cable_unsupported, first_support_off_board
from boardplan.checks.cable_ways import cable_off_board, cable_over_component, cable_without_way
from boardplan.checks.cables_apart import ac_beside_others, ac_crosses_askew, signal_beside_thick_dc
from boardplan.checks.channel_corners import bend_fits_corner
from boardplan.checks.channel_load import (
    cable_fits_channel,
    channel_too_full,
    classes_share_channel,
    many_loaded_conductors,
)
from boardplan.checks.channel_room import cover_crowded, little_finger_room
from boardplan.checks.check import Check, CheckBetween, CheckOnJob, CheckOnOne
from boardplan.checks.conductor_fits import conductor_misses_terminal
from boardplan.checks.covered_screws import screw_covered
from boardplan.checks.cutouts_clear import over_cutout
from boardplan.checks.edge_margin import off_the_board, too_near_edge
from boardplan.checks.exits_open import (
    exit_covered,
    exit_meets_back_part,
    exit_meets_framing,
    fixing_in_exit,
    screw_in_exit,
)
from boardplan.checks.flow_order import flow_out_of_order
from boardplan.checks.front_access import compartment_depth_unknown, front_in_compartment
from boardplan.checks.fuse_distances import fuse_too_far
from boardplan.checks.gland_tails import gland_tail_unknown
from boardplan.checks.hole_to_edge import hole_near_edge
from boardplan.checks.holes_apart import holes_too_close
from boardplan.checks.holes_behind import hole_meets_back_part, hole_meets_nut
from boardplan.checks.hot_units import above_hot_unit
from boardplan.checks.keep_clear import keep_clear_at_lip, keep_clear_blocked, keep_clear_walled
from boardplan.checks.link_bars import link_bar_offered
from boardplan.checks.lug_fits import lug_misses_stud, palm_over_pad, stud_unknown
from boardplan.checks.no_go_boxes import fixing_in_no_go_box, front_meets_no_go_box, in_no_go_box
from boardplan.checks.nuts_and_framing import nut_on_framing
from boardplan.checks.open_questions import (
    board_mass_missing,
    channel_screws_missing,
    exit_width_missing,
    kind_data_missing,
)
from boardplan.checks.opposite_poles import (
    lug_near_opposite_stud,
    opposite_lugs_near,
    opposite_studs_near,
    own_lugs_near,
    own_studs_near,
)
from boardplan.checks.pattern_check import patterns_not_checked
from boardplan.checks.screw_length import screws_of_channel, screws_of_component
from boardplan.checks.spots import BackPartSpot, CableSpot, ChannelSpot, ComponentSpot, ExitSpot, FixingSpot, NoGoSpot
from boardplan.checks.stud_stacks import lugs_have_no_fan, thread_too_short, too_many_lugs
from boardplan.checks.terminal_leaving import leaves_askew
from boardplan.checks.turns_allowed import keyholes_slip, turn_not_allowed
from boardplan.checks.u_jumpers import jumper_turns_back_tightly

COMPONENT, CHANNEL, FIXING, CABLE = (ComponentSpot,), (ChannelSpot,), (FixingSpot,), (CableSpot,)
BODIES = (ComponentSpot, ChannelSpot)
HOLED = (ComponentSpot, ChannelSpot, FixingSpot)

CHECKS: tuple[Check, ...] = (
    CheckOnJob("boards apart", "Does every board have its own piece of wall?", boards_overlap),
    CheckOnOne("off the board", "Is all of it on its board?", BODIES, off_the_board),
    CheckOnOne("edge margin", "Is it far enough inside the board's edges?", COMPONENT, too_near_edge),
    CheckOnOne("hole to edge", "Does every hole leave wood to the edge?", HOLED, hole_near_edge),
    CheckOnOne("cut-outs", "Does it stand over a cut-out?", BODIES, over_cutout),
    CheckBetween("bodies apart", "Do they leave a gap between them?", BODIES, BODIES, bodies_apart, mutual=True),
    CheckBetween("keep-clear", "Is the room it asks for free of this?", COMPONENT, BODIES, keep_clear_blocked),
    CheckOnOne("keep-clear lip", "Does the room it asks for stop at a raised edge?", COMPONENT, keep_clear_at_lip),
    CheckOnOne("keep-clear walls", "Is the room it asks for inside the compartment?", COMPONENT, keep_clear_walled),
    CheckBetween("hot units", "Does warmth from below harm it?", COMPONENT, COMPONENT, above_hot_unit),
    CheckOnOne("turn", "May it hang the way it is turned?", COMPONENT, turn_not_allowed),
    CheckOnOne("keyholes", "Does it stay on its screws as it is turned?", COMPONENT, keyholes_slip),
    CheckOnOne("front access", "Does its front have room in the compartment?", COMPONENT, front_in_compartment),
    CheckOnJob("compartment depth", "Is the depth of every compartment known?", compartment_depth_unknown),
    CheckBetween("no-go boxes", "Does it stand in space to stay empty?", BODIES, (NoGoSpot,), in_no_go_box),
    CheckBetween("front and no-go", "Does its front have room?", COMPONENT, (NoGoSpot,), front_meets_no_go_box),
    CheckBetween("fixing and no-go", "Can its head be there?", FIXING, (NoGoSpot,), fixing_in_no_go_box),
    CheckBetween("exits", "Does it leave the exit open?", BODIES, (ExitSpot,), exit_covered),
    CheckBetween("fixing and exit", "Does the fixing leave the exit open?", FIXING, (ExitSpot,), fixing_in_exit),
    CheckOnOne("exit and framing", "Is there no member behind it?", (ExitSpot,), exit_meets_framing),
    CheckBetween("exit and back", "Is this not behind it?", (ExitSpot,), (BackPartSpot,), exit_meets_back_part),
    CheckBetween("screw and exit", "Do its screws find wood beside the exit?", CHANNEL, (ExitSpot,), screw_in_exit),
    CheckBetween("covered screws", "Can every screw be reached past this?", BODIES, BODIES, screw_covered),
    CheckOnOne("fixing and framing", "Does it hit a member behind the board?", FIXING, fixing_misses_framing),
    CheckOnJob("framing known", "Is the framing behind every board known?", framing_unknown),
    CheckBetween("fixing head", "Is its head free of this?", FIXING, BODIES, fixing_head_blocked),
    CheckBetween("fixing and cable", "Is its head free of this cable?", FIXING, CABLE, fixing_under_cable),
    CheckOnOne("screws", "Do its screws hold, and stay inside the board?", COMPONENT, screws_of_component),
    CheckOnOne("channel screws", "Do its screws hold, and stay inside the board?", CHANNEL, screws_of_channel),
    CheckBetween("back parts", "Do its holes miss the part behind?", BODIES, (BackPartSpot,), hole_meets_back_part),
    CheckOnOne("nuts and framing", "Do its nuts lie beside the framing?", COMPONENT, nut_on_framing),
    CheckBetween("nuts behind", "Do its holes miss the nuts of this?", HOLED, HOLED, hole_meets_nut),
    CheckBetween("holes apart", "Do their holes leave wood between?", HOLED, HOLED, holes_too_close, mutual=True),
    CheckBetween("finger room", "Is there room for fingers?", COMPONENT, CHANNEL, little_finger_room),
    CheckBetween("cover side", "Can the channel's cover come off?", COMPONENT, CHANNEL, cover_crowded),
    CheckOnOne("channel fill", "Is it too full?", CHANNEL, channel_too_full),
    CheckOnOne("loaded conductors", "Do few enough conductors in it carry current?", CHANNEL, many_loaded_conductors),
    CheckOnOne("channel classes", "May the cables in it lie together?", CHANNEL, classes_share_channel),
    CheckBetween("cable in channel", "Does it fit the channel?", CABLE, CHANNEL, cable_fits_channel),
    CheckBetween("channel corner", "Can it bend round the channel's corners?", CABLE, CHANNEL, bend_fits_corner),
    CheckOnOne("cable way", "Can it be laid?", CABLE, cable_without_way),
    CheckOnOne("cable on board", "Does it lie on the boards?", CABLE, cable_off_board),
    CheckBetween("cable over body", "Does it pass clear of this?", CABLE, COMPONENT, cable_over_component),
    CheckOnOne("supports", "Is there room for clamps to hold it?", CABLE, cable_unsupported),
    CheckOnOne(
        "battery supports", "Is a cable to a battery held as often as it should be?", CABLE, battery_cable_unsupported
    ),
    CheckOnOne("first support", "Must a cable to a battery be held off the board?", CABLE, first_support_off_board),
    CheckOnOne("bends", "Have its bends room?", CABLE, bends_have_room),
    CheckOnOne("bend at lug", "Does it stay straight behind its lugs?", CABLE, bend_at_lug),
    CheckBetween("gland room", "Is there room before its gland?", CABLE, BODIES, gland_room_short),
    CheckBetween("crossings", "Do AC and others cross square?", CABLE, CABLE, ac_crosses_askew, mutual=True),
    CheckBetween("bending space", "Has its lug room to bend it before this?", CABLE, BODIES, bending_space_short),
    CheckOnOne("leaving", "Does it leave each terminal the way that one points?", CABLE, leaves_askew),
    CheckOnOne("jumper", "Can it be bent in between its lugs?", CABLE, jumper_too_short),
    CheckOnOne("U jumper", "Has it room to turn back between its studs?", CABLE, jumper_turns_back_tightly),
    CheckOnOne("link bar", "Would a bar do better than a cable that short?", CABLE, link_bar_offered),
    CheckOnOne("stock leads", "Is there a lead as long as that?", CABLE, lead_not_in_stock),
    CheckOnOne("legs", "Are its legs off the board measured?", CABLE, leg_estimated),
    CheckOnOne("lugs", "Are its lugs measured?", CABLE, lug_not_measured),
    CheckOnOne("lug and stud", "Has each lug the hole of its stud?", CABLE, lug_misses_stud),
    CheckOnOne("lug and pad", "Does each palm fit its pad?", CABLE, palm_over_pad),
    CheckOnOne("conductor and terminal", "Do its terminals take its size?", CABLE, conductor_misses_terminal),
    CheckOnOne("studs known", "Are the studs it goes on known?", CABLE, stud_unknown),
    CheckBetween("opposite lugs", "Is its lug clear of that one?", CABLE, CABLE, opposite_lugs_near, mutual=True),
    CheckOnOne("own lugs", "Are its own two lugs clear of each other?", CABLE, own_lugs_near),
    CheckBetween("lug and opposite stud", "Is its lug clear of the stud?", CABLE, COMPONENT, lug_near_opposite_stud),
    CheckBetween("opposite studs", "Are they apart?", COMPONENT, COMPONENT, opposite_studs_near, mutual=True),
    CheckOnOne("own studs", "Are its plus and minus studs apart?", COMPONENT, own_studs_near),
    CheckOnOne("exit width", "Is it known how wide to drill it?", (ExitSpot,), exit_width_missing),
    CheckOnOne("channel screws known", "Is it known what screws it down?", CHANNEL, channel_screws_missing),
    CheckOnJob("lugs on a stud", "Do no more lugs lie on a stud than may?", too_many_lugs),
    CheckOnJob("stud threads", "Does the thread of every stud hold its lugs?", thread_too_short),
    CheckOnJob("fanned lugs", "Can the lugs of every stud be fanned?", lugs_have_no_fan),
    CheckOnJob("current flow", "Does the current pass fuse, shut-off, bus and shunt in order?", flow_out_of_order),
    CheckOnJob("fuse distance", "Is the first fuse near its source?", fuse_too_far),
    CheckOnJob("AC apart", "Does AC run clear of everything else?", ac_beside_others),
    CheckOnJob("signal apart", "Do signal leads run clear of thick DC cables?", signal_beside_thick_dc),
    CheckOnJob("matched groups", "Do matched cables come out alike?", matched_surplus),
    CheckOnJob("pattern check", "Are the hole patterns checked?", patterns_not_checked),
    CheckOnJob("board masses", "Is the mass of every board with fixings known?", board_mass_missing),
    CheckOnJob("open questions", "What isn't known of the kinds in use?", kind_data_missing),
    CheckOnJob("gland tails", "Is it known how much cable goes on inside of glands?", gland_tail_unknown),
)
