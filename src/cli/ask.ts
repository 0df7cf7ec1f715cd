import { createInterface, type Interface } from 'node:readline';

/**
 * Asks a person at a terminal; `null` where either end is none. Lines that arrive together answer one question after
 * another. Between questions the input is paused, so that a command that asks nothing more can end. A closed input is
 * an empty answer.
 */
export function asker(
  input: NodeJS.ReadStream,
  output: NodeJS.WriteStream,
): ((question: string) => Promise<string>) | null {
  if (!input.isTTY || !output.isTTY) return null;
  const waiting: string[] = [];
  let lines: Interface | null = null;
  let closed = false;
  let answer: ((line: string) => void) | null = null;
  const open = (): Interface => {
    const opened = createInterface({ input, output });
    opened.on('line', (line) => {
      if (answer) answer(line);
      else waiting.push(line);
    });
    opened.on('close', () => {
      closed = true;
      answer?.('');
    });
    return opened;
  };
  return (question) => {
    lines ??= open();
    const asked = lines;
    output.write(question);
    const early = waiting.shift();
    if (early !== undefined || closed) return Promise.resolve(early ?? '');
    asked.resume();
    return new Promise((answered) => {
      answer = (line) => {
        answer = null;
        asked.pause();
        answered(line);
      };
    });
  };
}
