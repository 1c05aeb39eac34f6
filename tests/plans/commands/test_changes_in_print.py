"""A plan that goes on says on paper what has changed, and bears its own code on every page."""

from pathlib import Path

from pypdf import PdfReader

from tests.plans.commands.invoking import done, plan_of

JOB = """
[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
measured = [17.7]
length = 1220
width = 610
[[part]]
name = "Shelf"
length = 562
width = 280
count = 4
"""


def pages_of(job: Path) -> list[str]:
    """Return the words of every page as one line."""
    reader = PdfReader(job.with_suffix(".pdf"))
    return [" ".join(page.extract_text().split()) for page in reader.pages]


def test_the_first_page_lists_what_changed_and_every_page_has_the_new_code(tmp_path: Path) -> None:
    job = tmp_path / "shelf.toml"
    job.write_text(JOB, "utf-8")
    done("plan", job, "--effort", "0")
    before = plan_of(job)["fingerprint"]
    assert all(before in page for page in pages_of(job))
    done("mark", job, "1.1-1.3")
    job.write_text(JOB.replace("562", "540"), "utf-8")
    done("resume", job, "--effort", "1")
    document = plan_of(job)
    first, *_ = pages = pages_of(job)
    assert document["fingerprint"] != before
    assert all(f"plan {document['fingerprint']}" in page for page in pages)
    assert "Changed since the plan before" in first
    assert f"Goes on from plan {before} after cut 1.3" in first
    changes = document["earlier"]["changes"]
    assert any("562" in line and "540" in line for line in changes), changes
    assert all(" ".join(line.split()) in first for line in changes)
