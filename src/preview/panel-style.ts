/** The look of what the preview shows over a page, and of its own pages. */
export const panelStyle = `
:host { all: initial; }
:root, .panel, .to-bench { color-scheme: light dark; }
main { font: 1rem/1.5 system-ui, sans-serif; margin: 2rem auto; max-width: 40rem; padding: 0 1rem; }
h1 { font-size: 1.5rem; line-height: 1.2; }
li { margin-block: 0.5rem; }
.panel {
  position: fixed; inset: auto 0 0 0; z-index: 9999; max-height: 60vh; overflow: auto; box-sizing: border-box;
  padding: 0.75rem 1rem; background: Canvas; color: CanvasText; border-top: 0.4rem solid #8a5a00;
  font: 1rem/1.4 system-ui, sans-serif; box-shadow: 0 -0.2rem 1rem #0006;
}
.panel.errors { border-top-color: #a4161a; }
.panel strong { display: block; margin: 0 0 0.5rem; }
.panel pre { clear: both; margin: 0; white-space: pre; overflow-x: auto; font: 0.875rem/1.4 ui-monospace, monospace; }
.panel button { float: right; font: inherit; padding: 0.25rem 0.75rem; }
.to-bench {
  position: fixed; inset: auto 0.5rem 0.5rem auto; z-index: 9998; padding: 0.25rem 0.75rem; background: Canvas; color: CanvasText;
  border: 1px solid CanvasText; font: 0.875rem/1.4 system-ui, sans-serif;
}
@media print { .panel, .to-bench { display: none; } }
`;
