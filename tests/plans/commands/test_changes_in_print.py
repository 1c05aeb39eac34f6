"""A plan that follows another says on paper what has changed, and bears its own code."""

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


def test_a_plan_made_again_before_any_cut_lists_what_is_new(tmp_path: Path) -> None:
    job = tmp_path / "shelf.toml"
    job.write_text(JOB, "utf-8")
    done("plan", job, "--effort", "0")
    before = plan_of(job)["fingerprint"]
    assert "Changed since the plan before" not in pages_of(job)[0]
    foot = '[[part]]\nname = "Foot"\nlength = 80\nwidth = 80\n'
    job.write_text(JOB.replace("562", "540") + foot + "[saw]\nkerf = 3\n", "utf-8")
    done("plan", job, "--effort", "0")
    first, *_ = pages_of(job)
    assert f"Takes the place of plan {before}" in first
    assert "Shelf: 540 × 280, before 562 × 280." in first
    assert "The kerf is 3 mm, before 2.4 mm." in first
    assert "Not in that plan: Foot." in first
    job.write_text(JOB.replace("Shelf", "Board"), "utf-8")
    done("plan", job, "--effort", "0")
    assert "No longer cut: Foot, Shelf." in pages_of(job)[0]


def test_a_plan_made_again_from_the_same_job_lists_nothing(tmp_path: Path) -> None:
    job = tmp_path / "shelf.toml"
    job.write_text(JOB, "utf-8")
    done("plan", job, "--effort", "0")
    first = job.with_suffix(".pdf").read_bytes()
    done("plan", job, "--effort", "0")
    assert job.with_suffix(".pdf").read_bytes() == first
