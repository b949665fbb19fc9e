"""What is no walk-through of a house gives a clear message and no draft: other languages, music, noise, other files.

All sentences and verses here are our own.
"""

from __future__ import annotations

import zlib

import pytest

from witnessmark.listening import Line, Narration, listen, read_narration
from witnessmark.packs.model import Packs
from witnessmark.problems import Refusal

NOTHING = [
    ("spanish", "hoy hace mucho calor y vamos a comer con mis primos en la playa no se si viene mi hermana"),
    ("short spanish", "la cocina no tiene luz"),
    ("french", "je ne sais pas si on a le temps de passer chez le boulanger avant midi mais on peut essayer"),
    ("short french", "la porte est ouverte"),
    ("german", "also heute war der zug wieder zu spät und die leute standen im regen so war das in der stadt"),
    ("short german", "das dach ist undicht"),
    ("italian", "domani vado al mercato a prendere il pane e poi torno a casa per la cena con mia nonna"),
    ("portuguese", "o meu vizinho comprou um carro novo e agora quer ir com a gente para a serra no fim de semana"),
    ("dutch", "we gaan morgen met de fiets naar het strand en dan eten we daar een broodje met kaas"),
    ("polish", "wczoraj wieczorem siedzieliśmy w ogrodzie i słuchaliśmy jak deszcz pada na liście"),
    ("swedish", "det var en gång en liten pojke som bodde i en stuga långt inne i skogen med sin mor"),
    ("turkish", "bugün hava çok güzel olduğu için arkadaşlarımla birlikte parka gittik ve çay içtik"),
    ("indonesian", "kemarin saya pergi ke pasar untuk membeli buah dan sayur bersama ibu saya"),
    ("vietnamese", "hôm nay trời đẹp nên chúng tôi đi bộ ra hồ và uống cà phê với bạn bè"),
    ("russian", "сегодня мы гуляли по парку и кормили уток а потом пошли домой пить чай"),
    ("japanese", "今日は とても 暑い ので 家で 本を 読んで います"),
    ("arabic", "ذهبنا اليوم الى السوق واشترينا الخبز والفاكهة ثم عدنا الى البيت"),
    ("swahili", "leo asubuhi tulikwenda sokoni kununua matunda na mboga kwa ajili ya chakula cha jioni"),
    ("music", "[Music]"),
    ("music and applause", "[Music]\n[Applause]\n(music)\n[MUSIC PLAYING]"),
    ("notes", "♪\n♪♪\n♪ ♫ ♪"),
    ("sung between notes", "♪ the water is dripping down my kitchen wall ♪\n♪ oh the furnace is cold tonight"),
    ("no speech", "[BLANK_AUDIO]\n[inaudible]\n(background noise)"),
    (
        "verse of a road",
        (
            "oh i walked a lonesome highway till the morning light came shining\nand i called your name to the wind and the pines\n"
            "and the night was long and the road was long\nbut i never lost the tune you gave me darling"
        ),
    ),
    (
        "verse of a dance",
        (
            "come on baby let me see you move\nwe are dancing in the summer groove\nyou are my sunshine you are my moon\n"
            "and the band is playing our little tune\nhey hey hey we will never say goodbye"
        ),
    ),
    (
        "verse of a sailor",
        (
            "sail me over the silver sea my love\nwith the stars for a map and the gulls above\n"
            "i was young and the wind was strong\nand my heart was a drum and the day was a song"
        ),
    ),
    (
        "verse of a heart",
        (
            "my heart is broken since you said goodbye\nand the tears keep falling from a clear blue sky\n"
            "tell me why tell me why did you go away\ni could have loved you forever and a day"
        ),
    ),
    ("keyboard", "asdf jkl qwer zxcv uiop hjkl tyui bnm wert sdfg"),
    (
        "filling text",
        "lorem ipsum dolor sit amet consectetur adipiscing elit sed do eiusmod tempor incididunt ut labore et dolore",
    ),
    ("small talk", "hey good morning how are you\nyeah thanks a lot\nsee you tomorrow then"),
]


@pytest.mark.parametrize(("text"), [text for _, text in NOTHING], ids=[name for name, _ in NOTHING])
def test_no_walk_through_gives_no_draft_and_says_so(text: str, shipped: Packs) -> None:
    lines = tuple(Line(4.0 * n, 4.0 * n + 4, line) for n, line in enumerate(text.split("\n")))
    heard = listen(Narration("t", lines), shipped)
    assert [(d.act, d.label, d.what) for d in heard.drafts] == []
    assert [p.number for p in heard.problems] == ["WM611"]


FILES = [
    ("nothing", b"", "WM602"),
    ("only spaces", b" \n\t\n", "WM602"),
    ("zeros", bytes(200), "WM605"),
    ("picture", b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR", "WM605"),
    ("photo", b"\xff\xd8\xff\xe0\0\x10JFIF\0\x01", "WM605"),
    ("archive", b"PK\x03\x04\x14\0\0\0\x08\0", "WM605"),
    ("compressed", zlib.compress(bytes(range(256)) * 20), "WM605"),
    ("sound", b"RIFF\x24\0\0\0WAVEfmt ", "WM601"),
    ("film", b"\0\0\0\x18ftypmp42", "WM601"),
    ("table", b"room,item,state\nkitchen,sink,good\nbath,tub,chipped\n", "WM607"),
    ("page", b"<!doctype html><html><body><p>Roof: good</p></body></html>", "WM607"),
    ("settings", b'{"name": "house", "rooms": 4}', "WM607"),
    ("letter", b"Dear Sir,\nthe roof was repaired last year.\nYours\n", "WM607"),
]


@pytest.mark.parametrize(("data", "number"), [row[1:] for row in FILES], ids=[row[0] for row in FILES])
def test_a_file_that_is_no_narration_is_refused_with_its_reason(data: bytes, number: str) -> None:
    with pytest.raises(Refusal) as refused:
        read_narration(data, "given")
    assert refused.value.problems[0].number == number
    assert "given" in str(refused.value)


STILL_HEARD = [
    "the roof is leaking",
    "[Music] the handrail is loose",
    "(door creaks) the water heater is a forty gallon",
    "the brennock is dripping",
    "the thingamajig by the gate is broken",
    "♪ la la la ♪ the furnace filter is filthy",
    "sink good tub good toilet loose",
]


@pytest.mark.parametrize("text", STILL_HEARD)
def test_a_short_sentence_of_a_house_is_heard(text: str, shipped: Packs) -> None:
    heard = listen(Narration("t", (Line(0.0, 4.0, text),)), shipped)
    assert heard.drafts
    assert heard.problems == ()
    assert not any("music" in d.text.lower() or "♪" in d.text for d in heard.drafts)


@pytest.mark.parametrize("text", ["we are in the kitchen", "normally you would want a pan under it"])
def test_where_one_is_and_what_is_taught_is_understood_without_a_draft(text: str, shipped: Packs) -> None:
    heard = listen(Narration("t", (Line(0.0, 4.0, text),)), shipped)
    assert heard.drafts == ()
    assert heard.problems == ()
