from nesting.cabinets.letters import USABLE_LETTERS, name_cabinets

LETTERS_THAT_READ_AS_ANOTHER_UPSIDE_DOWN = set("MWNZ")
LETTERS_THAT_LOOK_LIKE_FIGURES = set("IOSGQ")


def test_letters_run_on_and_then_double() -> None:
    letters = name_cabinets(40)
    assert letters[:13] == tuple("ABCDEFJKRTUVY")
    assert letters[13:16] == ("AA", "AB", "AC")
    assert letters[26:28] == ("BA", "BB")
    assert name_cabinets(5, already=11) == letters[11:16]


def test_no_two_cabinets_share_a_letter() -> None:
    letters = name_cabinets(3000)
    assert len(set(letters)) == 3000
    assert len(letters[13 + 13 * 13]) == 3


def test_letters_are_safe_on_a_dusty_floor() -> None:
    unsafe = LETTERS_THAT_READ_AS_ANOTHER_UPSIDE_DOWN | LETTERS_THAT_LOOK_LIKE_FIGURES
    assert not unsafe & set(USABLE_LETTERS)
    assert not set("LP") & set(USABLE_LETTERS)
