/**
 * A style sheet without its comments and the blanks that nothing needs, as CSS Syntax Level 3 has it: texts in
 * quotes stay as they are, and a blank stays wherever it may part two words or join two selectors.
 */
export function compactStyle(style: string): string {
  const plain = style.replace(textOrComment, (part) => (part.startsWith('/*') ? '' : part));
  return plain
    .split(texts)
    .map((part, index) =>
      // Every second part is a text, since it is caught.
      index % 2 === 1
        ? part
        : part
            .replace(/\s+/g, ' ')
            .replace(/ ?([{};,]) ?/g, '$1')
            .replace(/: /g, ':')
            .replace(/;}/g, '}'),
    )
    .join('')
    .trim();
}

const text = /"(?:\\.|[^"\\])*"|'(?:\\.|[^'\\])*'/;
const texts = new RegExp(`(${text.source})`);
const textOrComment = new RegExp(`${text.source}|/\\*[\\s\\S]*?(?:\\*/|$)`, 'g');
