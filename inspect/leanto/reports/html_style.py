"""The look of the HTML report: as the PDF, with room for large type."""

from __future__ import annotations

STYLE = """
:root { color: #1c1c1c; background: #fff; font: 100%/1.5 "Noto Sans", sans-serif; }
body { max-width: 62rem; margin: 0 auto; padding: 1rem; overflow-wrap: break-word; }
.skip { position: absolute; left: -100rem; }
.skip:focus { position: static; }
.kind, h1, h2, h3, h4, h5, th { color: #24555c; }
.kind { margin: 0; }
h1 { margin-top: 0; }
h2 { border-top: 2px solid #24555c; padding-top: .5rem; margin-top: 2.5rem; }
.note, small, figcaption, footer { color: #4a4a4a; }
.lead, .invented { font-size: 1.15rem; font-weight: bold; }
table { border-collapse: collapse; width: 100%; margin: 1rem 0; }
th, td { border-bottom: 1px solid #b9b9b9; padding: .3rem .5rem; text-align: left;
  vertical-align: top; }
.right { text-align: right; }
.center { text-align: center; }
.band th { background: #efefec; }
tfoot td { font-weight: bold; }
dt { font-weight: bold; }
.caution { border: 2px solid #1c1c1c; padding: .5rem 1rem; margin: 1rem 0; }
.mark { border: 1px solid #1c1c1c; padding: 0 .3rem; font-weight: bold;
  text-transform: uppercase; }
.entry { margin: 1.2rem 0 1.2rem calc(1.5rem * var(--depth, 0)); }
.entry :is(h3, h4, h5) { margin: 0; }
.entry p { margin: .2rem 0; }
figure { margin: 1rem 0; }
figure svg { max-width: 100%; height: auto; }
img { max-width: 100%; height: auto; }
@media print { nav, .skip { display: none; } }
"""
