/** The look of the bench for pictures. */
export const benchStyle = `
main { max-width: none; margin: 1rem; }
h1 { font-size: 1.3rem; margin: 0; }
h2 { font-size: 1rem; margin: .75rem 0 .4rem; }
.bench { display: grid; grid-template-columns: 14rem minmax(20rem, 1fr) minmax(20rem, 28rem); gap: 1.5rem; align-items: start; }
.bench-list button { display: block; width: 100%; padding: .4rem; margin: 0 0 .4rem; font: inherit; text-align: left; background: none; border: 1px solid #999; color: inherit; }
.bench-list button[aria-pressed=true] { border: 3px solid #3f7fc0; padding: calc(.4rem - 2px); }
.bench-list img { display: block; max-width: 100%; max-height: 6rem; margin-bottom: .2rem; }
.bench-drop { border: 2px dashed #777; padding: .75rem; margin-bottom: .75rem; }
.bench-drop.over { border-style: solid; }
.bench-stage { position: relative; border: 1px solid #777; touch-action: none; cursor: crosshair; user-select: none; }
.bench-stage img { display: block; width: 100%; }
.bench-dot { position: absolute; width: 1.6rem; height: 1.6rem; margin: -.8rem 0 0 -.8rem; border: 2px solid #fff; outline: 2px solid #111; border-radius: 50%; background: #111c; color: #fff; font: 700 .9rem/1.35rem system-ui, sans-serif; text-align: center; padding: 0; cursor: move; }
.bench-dot[aria-current=true] { background: #0b5394; outline-color: #0b5394; }
.bench-box { position: absolute; border: 2px dashed #fff; outline: 2px dashed #111; pointer-events: none; font: .8rem system-ui, sans-serif; color: #fff; text-shadow: 0 0 3px #000; }
.bench-tools { display: flex; flex-wrap: wrap; gap: .5rem 1rem; align-items: center; margin: 0 0 .5rem; padding: 0; border: 0; }
.bench-form label { display: block; margin: 0 0 .6rem; }
.bench-form :is(input, select, textarea) { display: block; width: 100%; box-sizing: border-box; font: inherit; padding: .3rem; }
.bench-form table { width: 100%; border-collapse: collapse; margin: 0 0 .6rem; }
.bench-form td { padding: .15rem; vertical-align: top; }
.bench-form td:first-child { width: 2.5rem; }
.bench-form button, .bench-tools button { font: inherit; padding: .4rem .75rem; }
.bench-print { margin: 1rem 0; padding: .5rem; max-width: 30rem; background: #fff; color: #111; }
.bench-plate { position: relative; }
.bench-told { min-height: 1.5em; font-weight: 600; }
.bench-print .shown { position: absolute; overflow: hidden; }
.bench-print .shown img { position: absolute; }
.bench-print svg { position: relative; display: block; width: 100%; }
.bench-panel summary { font-weight: 700; padding: .5rem 0; }
.bench-panel label { display: block; margin: 0 0 .5rem; }
.bench-panel :is(input:not([type=checkbox]), select, button) { font: inherit; padding: .3rem; }
.bench-panel select { max-width: 100%; }
.bench-panel output { display: block; overflow-wrap: anywhere; font-family: monospace; margin: .5rem 0; }
.bench-pan { overflow: auto; max-height: 85vh; border: 1px solid #777; margin: .5rem 0; }
.bench-points { position: relative; cursor: crosshair; user-select: none; }
.bench-points :is(img, svg) { display: block; width: 100%; }
.bench-points svg { position: absolute; inset: 0; height: 100%; fill: none; stroke: #fff; pointer-events: none; filter: drop-shadow(0 0 1px #000); }
.bench-point { position: absolute; width: 1.6rem; height: 1.6rem; margin: -.8rem 0 0 -.8rem; padding: 0; border: 0; border-radius: 50%; text-align: left; text-indent: 1.8rem; white-space: nowrap; box-shadow: inset 0 0 0 1px #fff, inset 0 0 0 2px #111; background: radial-gradient(circle, #fff 1px, #111 1px 2px, #0000 2px); color: #fff; font: 700 .9rem/1.6rem system-ui, sans-serif; text-shadow: 0 0 3px #000, 0 0 3px #000; pointer-events: none; overflow: visible; box-sizing: border-box; }
.bench-point[aria-current=true] { box-shadow: inset 0 0 0 2px #fff, 0 0 0 2px #0b5394; outline: 0; }
@media (max-width: 70rem) { .bench { grid-template-columns: minmax(0, 1fr); } }
`;
