"""Findings list: everything is on it, accepted findings with the name and the reason."""

from boards import lookout_cabin

from boardplan.checks.review import review_of
from boardplan.output.findings.findings_list import findings_listing, findings_tables
from boardplan.output.tables.table import Heading


def test_no_finding_is_left_out_and_acceptance_is_shown():
    review = review_of(lookout_cabin())
    (table,) = findings_tables(review)
    rows = [row for row in table.rows if not isinstance(row, Heading)]
    assert [row[2].text for row in rows].count(review.findings[0].sentence) == 1
    assert sorted(row[2].text for row in rows) == sorted(each.sentence for each in review.findings)
    accepted = {row[2].text: row[3] for row in rows if row[3].text}
    assert accepted.keys() == {each.sentence for each in review.findings if each.accepted}
    assert all(cell.text.startswith("Lead") and cell.small for cell in accepted.values())
    assert "under rule set trade-practice, edition 2026.1" in table.title


def test_groups_run_from_what_stops_to_what_is_accepted():
    (table,) = findings_tables(review_of(lookout_cabin()))
    headings = [row.text for row in table.rows if isinstance(row, Heading)]
    assert headings == ["To clear, or to accept by name and with a reason", "Worth knowing", "Accepted"]


def test_the_list_for_a_spreadsheet_holds_every_finding_in_its_order():
    review = review_of(lookout_cabin())
    listing = findings_listing(review)
    rows = [dict(zip(listing.heads, row, strict=True)) for row in listing.rows]
    assert [row["sentence"] for row in rows] == [each.sentence for each in review.findings]
    assert {row["state"] for row in rows} == {"open", "accepted"}
    for row, finding in zip(rows, review.findings, strict=True):
        assert (row["severity"], row["measured"], row["limit"]) == (finding.severity, finding.measured, finding.limit)
        assert row["accepted_by"] == (finding.accepted.name if finding.accepted else None)
        assert row["state"] == ("accepted" if finding.accepted else "open")
