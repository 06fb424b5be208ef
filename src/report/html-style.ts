// The look of the page: pale paper, ink, a ruled margin. One constant text, so that its hash can stand in the page's policy.

/** Styles of the page. No colour says anything that a word or a shape does not. */
export const style = `
:root{color-scheme:light}
*{box-sizing:border-box}
body{margin:0;background:#faf6ea;color:#1c1a17;font:1rem/1.5 Georgia,"Times New Roman",serif}
header,main,footer{max-width:110rem;margin:0 auto;padding:1rem 1.5rem}
h1{font-size:1.7rem;line-height:1.2;margin:.4rem 0}
h2{font-size:1.05rem;letter-spacing:.04em;margin:1.8rem 0 .6rem;border-bottom:2px solid #1c1a17}
h3{font-size:1rem;margin:0;display:inline;font-weight:bold}
p,ul{margin:.4rem 0;max-width:46rem}
ul{padding-left:1.2rem}
a{color:inherit}
a:focus-visible,summary:focus-visible{outline:3px solid #1c1a17;outline-offset:2px}
.skip{position:absolute;left:-60rem}
.skip:focus{left:1rem;top:.5rem;background:#faf6ea;padding:.3rem .6rem}
.head{font-size:1.1rem}
.sketch{margin:0}
.sketch svg{display:block}
.sketch a:focus,.sketch a:target{outline:1px solid #1c1a17}
:target{scroll-margin-top:1rem}
.sketch+.sketch{margin-top:1.5rem}
.entry{margin:0 0 .9rem;padding:.1rem 0 .1rem .9rem;border-left:1px solid #b08a8a}
summary{cursor:pointer}
.stone{display:inline-block;min-width:1.7em;height:1.7em;line-height:1.5em;text-align:center;font:bold .85rem/1.5em Helvetica,Arial,sans-serif;margin-right:.4em;padding:0 .2em;border:2px solid #1c1a17}
.square{background:#1c1a17;color:#faf6ea}
.ring{border-radius:50%}
.open-ring{border-radius:50%;border-style:dashed}
.dash{border-width:0 0 4px}
dl{display:grid;grid-template-columns:3.2rem 1fr;gap:.2rem .6rem;margin:.4rem 0;max-width:46rem}
dt{font-style:italic}
dd{margin:0}
dd p{margin:0 0 .3rem}
.mark{font:.78rem/1.4 "DejaVu Sans Mono",Menlo,Consolas,monospace;margin:.3rem 0;overflow:hidden;white-space:pre}
.place{font-size:.85rem}
@media(min-width:70rem){main{display:grid;grid-template-columns:minmax(0,3fr) minmax(26rem,2fr);gap:2rem}.sketches{position:sticky;top:1rem;align-self:start;max-height:98vh;overflow:auto}}
.larger{font-size:.85rem;margin:.2rem 0}
.smaller{display:none}
@media screen{.sketch svg{width:100%;height:auto;border:1px solid #b9ae92}.sketch:target{position:fixed;inset:0;z-index:1;margin:0;padding:.5rem;overflow:auto;background:#faf6ea}.sketch:target svg{width:100rem;max-width:none}.sketch:target .smaller{display:inline}.sketch:target .bigger{display:none}}
@media(max-width:30rem){.mark{font-size:.62rem}}
@page{size:A4;margin:14mm}
@page sketch{size:297mm 210mm;margin:0}
@page large{size:420mm 297mm;margin:0}
@media print{.skip,.larger{display:none}body{font-size:10pt;background:none}header,main,footer{padding:0;max-width:none}main{display:block}.sketches{position:static;max-height:none}.sketch{page:sketch;break-before:page;break-after:page}.sketch.large{page:large}.sketch+.sketch{margin:0}.entry{break-inside:avoid}h2{break-after:avoid}summary{list-style:none}a{text-decoration:none}}
`;

/** SHA-256 of the style in base 64, for the page's policy (COMPUTED; a test works it out again). */
export const styleHash = "eTupdQXXlnQU6PRHVYC7deUTGtS+8vYBh05LVk24AIs=";
