/** A mark as the bench shows and takes it. */
export interface BenchMark {
  readonly letter: string;
  /** "31%,44%": how far across and how far down the upright picture. */
  readonly at: string;
  /** What the key says, as it is written. */
  readonly text: string;
}

/** A figure as the bench shows and takes it: words as they are written, and empty for what is not. */
export interface BenchFigure {
  /** Where the picture lies, from the folder of the guide. */
  readonly src: string;
  readonly caption: string;
  readonly alt: string;
  readonly shows: string;
  readonly crop: string;
  readonly blur: string;
  readonly zoom: string;
  readonly marks: readonly BenchMark[];
}

/** The attributes of a figure that the bench knows, in the order in which it writes them. */
export const figureAttributes = ['src', 'alt', 'shows', 'crop', 'blur', 'zoom'] as const;

/** A figure as an author writes it; lines end with `\n`. */
export function figureText(figure: BenchFigure): string {
  const written = figureAttributes.flatMap((name) =>
    figure[name] === '' ? [] : [`${name}=${attributeText(figure[name])}`],
  );
  return [`:::figure[${figure.caption}]{${written.join(' ')}}`, ...figure.marks.map(markText), ':::'].join(
    '\n',
  );
}

/** A line of the key. */
export function markText({ letter, at, text }: BenchMark): string {
  return `- :mark[${letter}]{at="${at}"}${text === '' ? '' : ` ${text}`}`;
}

/** A value as an attribute holds it: bare where it can be, quoted where it has to be. */
export function attributeText(value: string): string {
  return /^[A-Za-z0-9][\w./-]*$/.test(value) ? value : `"${quotable(value)}"`;
}

/** What stands between quotes: signs that would end them, or be read as another, by their names. */
export function quotable(value: string): string {
  return value.replaceAll('&', '&amp;').replaceAll('"', '&quot;');
}
