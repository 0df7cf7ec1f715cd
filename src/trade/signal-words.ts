/** The words of ANSI Z535.6, most severe first. */
export const signalWords = ['danger', 'warning', 'caution', 'notice'] as const;

export type SignalWord = (typeof signalWords)[number];

/** How a shop marks what can hurt: ANSI Z535.6, or ISO 3864-2, which has no word for mere damage. */
type SignalScheme = 'ansi' | 'iso';

/** What a signal word says and how its panel looks. */
interface SignalPanel {
  /** As printed in the panel; empty where the scheme has no word. */
  readonly word: string;
  readonly meaning: string;
  /** Background and text as CSS hexadecimals; the pairs reach a contrast of 4.5. */
  readonly background: string;
  readonly text: string;
  /** The safety alert symbol stands only for injury to people, never beside NOTICE. */
  readonly alert: boolean;
}

/** Screen values of RAL 3001, 2010, 1003 and 5005, the colours of ISO 3864-4, with the text that ANSI Z535.4 gives. */
const panels: { readonly [word in SignalWord]: SignalPanel } = {
  danger: {
    word: 'DANGER',
    meaning: 'will kill or seriously injure if it is not avoided',
    background: '#9b2423',
    text: '#ffffff',
    alert: true,
  },
  warning: {
    word: 'WARNING',
    meaning: 'could kill or seriously injure if it is not avoided',
    background: '#d05d29',
    text: '#000000',
    alert: true,
  },
  caution: {
    word: 'CAUTION',
    meaning: 'could cause a minor or moderate injury if it is not avoided',
    background: '#f9a800',
    text: '#000000',
    alert: true,
  },
  notice: {
    word: 'NOTICE',
    meaning: 'could damage the part or what it is fitted to; nobody is hurt',
    background: '#005387',
    text: '#ffffff',
    alert: false,
  },
};

/** The panel of a word in a scheme. ISO 3864-2 has no NOTICE, so there the message stands without a word. */
export function signalPanel(word: SignalWord, scheme: SignalScheme): SignalPanel {
  const panel = panels[word];
  return scheme === 'iso' && word === 'notice' ? { ...panel, word: '' } : panel;
}

/** Orders words most severe first. */
export function compareSignalWords(a: SignalWord, b: SignalWord): number {
  return signalWords.indexOf(a) - signalWords.indexOf(b);
}

/** The word for a message about several hazards: the most severe; undefined for none. */
export function mostSevere(words: readonly SignalWord[]): SignalWord | undefined {
  return signalWords.find((word) => words.includes(word));
}
