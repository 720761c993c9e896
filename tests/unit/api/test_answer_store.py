"""The store of answers: what is asked for lately stays, and the bounds hold."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor

from ionwright.api.answers import Answer, AnswerStore, tagged_answer


def answer(body: bytes) -> Answer:
    return Answer(200, body, ())


def test_the_least_recently_used_answer_goes_first() -> None:
    store = AnswerStore(entries=2, size=1000)
    store.put("brine", answer(b"1"))
    store.put("bracket", answer(b"2"))
    assert store.get("brine") is not None
    store.put("reflector", answer(b"3"))
    assert store.get("bracket") is None
    assert store.get("brine") is not None
    assert len(store) == 2


def test_the_bound_in_bytes_holds() -> None:
    store = AnswerStore(entries=100, size=80)
    for number in range(20):
        store.put(number, answer(b"x" * 10))
    assert store.held_bytes == 80
    assert len(store) == 8
    assert store.get(19) is not None
    assert store.get(0) is None


def test_replacing_an_answer_counts_it_once() -> None:
    store = AnswerStore(entries=10, size=800)
    store.put("brine", answer(b"x" * 50))
    store.put("brine", answer(b"x" * 20))
    assert store.held_bytes == 20


def test_an_answer_that_would_push_out_too_many_others_is_not_kept() -> None:
    store = AnswerStore(entries=10, size=80)
    store.put("long", answer(b"x" * 11))
    assert store.get("long") is None
    assert store.held_bytes == 0


def test_a_store_without_room_keeps_nothing() -> None:
    store = AnswerStore(entries=0, size=1000)
    store.put("brine", answer(b"1"))
    assert store.get("brine") is None


def test_threads_do_not_upset_the_count() -> None:
    store = AnswerStore(entries=50, size=10_000)

    def use(start: int) -> None:
        for number in range(start, start + 500):
            store.put(number % 90, answer(b"x" * (number % 7)))
            store.get((number * 7) % 90)

    with ThreadPoolExecutor(8) as pool:
        list(pool.map(use, range(0, 4000, 500)))
    assert len(store) <= 50
    kept = [store.get(key) for key in range(90)]
    assert store.held_bytes == sum(len(found.body) for found in kept if found)


def test_equal_bytes_have_equal_tags_and_others_have_not() -> None:
    assert tagged_answer(b"Ni").etag == tagged_answer(b"Ni").etag
    assert tagged_answer(b"Ni").etag != tagged_answer(b"Cu").etag
    assert tagged_answer(b"Ni").etag.startswith('"')
