import { nearest, quotedList } from '../../diagnostics/suggest.ts';
import type { PictureBox, PicturePlace } from '../../model/block.ts';
import type { Ref } from '../../model/inline.ts';
import type { Span, Written } from '../../source/span.ts';
import { type Drive, parseDrive } from '../../trade/drives.ts';
import { parseThread, type Thread } from '../../trade/thread.ts';
import { parseFriction, type StatedFriction } from '../../trade/torque.ts';
import { widthStandardNamed, widthStandardNames } from '../../trade/widths.ts';
import { parseWire, type Wire } from '../../trade/wire.ts';
import type { Estimate } from '../../units/estimate.ts';
import { parseEstimate } from '../../units/estimate.ts';
import { parseQuantity, parseRange } from '../../units/parse.ts';
import type { Dimension, Quantity, QuantityRange } from '../../units/quantity.ts';
import { parseRecheck, type Recheck } from '../../units/recheck.ts';
import { parseTorque, type TorqueSpec } from '../../units/torque.ts';
import { type AttributeType, bad, good } from './attribute.ts';
import { idLike, isId, tooLongForId } from './id-text.ts';

/** Words as written. */
export const words: AttributeType<string> = {
  expects: 'words',
  read: (text) => (text.trim() === '' ? bad('the value is empty; words were expected') : good(text.trim())),
};

/** One id. */
export const id: AttributeType<string> = {
  expects: 'an id, as in `trim-lever`',
  read: (text) =>
    isId(text)
      ? good(text)
      : bad(
          `"${text}" is not an id; ${tooLongForId(text) ?? 'lower-case letters, digits and hyphens make one'}`,
          tooLongForId(text) === null ? idLike(text) : undefined,
        ),
};

/** The id of something declared elsewhere. */
export const ref: AttributeType<Ref> = {
  expects: 'the id of what is meant',
  read: (text, at) => {
    const reading = id.read(text, at);
    return reading.ok ? good({ value: reading.value, at }) : reading;
  },
};

/** Ids set apart by spaces, at least one. */
export const refs: AttributeType<readonly Ref[]> = {
  expects: 'ids set apart by spaces, as in `cover beam`',
  read: (text, at) => {
    const list: Ref[] = [];
    for (const word of placedWords(text, at)) {
      const parts = word.value.split(',').filter((part) => part !== '');
      if (parts.length > 0 && word.value.includes(',') && parts.every((part) => isId(part))) {
        return bad('ids stand apart by spaces, not by commas', parts.join(' '), word.at);
      }
      if (!isId(word.value)) {
        return bad(
          `"${word.value}" is not an id; ids are lower-case and stand apart by spaces`,
          idLike(word.value),
          word.at,
        );
      }
      list.push(word);
    }
    return list.length > 0 ? good(list) : bad('the value is empty; at least one id was expected');
  },
};

/** Words set apart by commas. */
export const list: AttributeType<readonly string[]> = {
  expects: 'words set apart by commas',
  read: (text) => good(text.split(',').flatMap((word) => word.trim() || [])),
};

/** Present or not. */
export const flag: AttributeType<true> = {
  expects: 'nothing: the bare name',
  flag: true,
  read: () => good(true),
};

/** `yes` or `no`. */
export const yesNo: AttributeType<boolean> = {
  expects: '`yes` or `no`',
  read: (text) =>
    text === 'yes' || text === 'no'
      ? good(text === 'yes')
      : bad(`"${text}" was found where "yes" or "no" was expected`),
};

/** One of a few words. */
export function oneOf<const T extends string>(...choices: readonly T[]): AttributeType<T> {
  return {
    expects: choices.map((choice) => `\`${choice}\``).join(' or '),
    read: (text) => {
      const found = choices.find((choice) => choice === text);
      return found
        ? good(found)
        : bad(
            `"${text}" was found where ${quotedList(choices, 'or')} was expected`,
            nearest(text, choices)[0],
          );
    },
  };
}

/** A whole number within bounds. */
export function wholeNumber(least: number, most: number): AttributeType<number> {
  return {
    expects: `a whole number from ${least} to ${most}`,
    read: (text) => {
      const value = Number(text);
      return /^-?\d+$/.test(text) && value >= least && value <= most
        ? good(value)
        : bad(`"${text}" was found where a whole number from ${least} to ${most} was expected`);
    },
  };
}

/** A quantity of a stated kind, or of any of several kinds. */
export function quantity<D extends Dimension>(...kinds: readonly D[]): AttributeType<Quantity<D>> {
  return {
    expects: `${kinds.join(' or ')} with its unit`,
    read: (text) => {
      const readings = kinds.map((kind) => parseQuantity(text, kind));
      const found = readings.find((reading) => reading.ok);
      if (found?.ok) return good(found.quantity);
      const first = readings[0];
      return first && !first.ok ? bad(first.message, first.suggestion) : bad(`"${text}" is not a quantity`);
    },
  };
}

/** A length that may lie on either side of its datum. */
export const position: AttributeType<Quantity<'length'>> = {
  expects: 'a length with its unit, negative on the other side, as in `-20 mm`',
  read: (text) => {
    const reading = parseQuantity(text, 'length', { negative: true });
    return reading.ok ? good(reading.quantity) : bad(reading.message, reading.suggestion);
  },
};

/** A quantity above zero: a size. */
export function size<D extends Dimension>(kind: D): AttributeType<Quantity<D>> {
  const any = quantity(kind);
  return {
    expects: `${kind} above zero, with its unit`,
    read: (text, at) => {
      const reading = any.read(text, at);
      return reading.ok && reading.value.base <= 0
        ? bad(`"${text}" was found where a ${kind} above zero was expected`)
        : reading;
    },
  };
}

/** A range, or a single value that is both its ends. */
export function range<D extends Dimension>(...kinds: readonly D[]): AttributeType<QuantityRange<D>> {
  return {
    expects: `a range of ${kinds.join(' or ')} with its unit, as in \`${kinds.some((kind) => kind === 'area') ? '0.5..6 mm²' : '10..60 N·m'}\``,
    read: (text) => {
      const readings = kinds.map((kind) => parseRange(text, kind));
      const found = readings.find((reading) => reading.ok);
      if (found?.ok) return good(found.range);
      const first = readings[0];
      return first && !first.ok ? bad(first.message, first.suggestion) : bad(`"${text}" is not a range`);
    },
  };
}

/** Hands-on time. */
export const estimate: AttributeType<Estimate> = {
  expects: 'a time, a range or least/likely/most, as in `5 min`, `3..6 min`, `4/6/15 min`',
  read: (text) => {
    const reading = parseEstimate(text);
    if (!reading.ok) return bad(reading.message, reading.suggestion);
    if (reading.estimate.most > 0) return good(reading.estimate);
    return bad(`"${text}" is no time at all; write what the work takes, as in "2 min", or leave it out`);
  },
};

/** A torque in one or more passes. */
export const torque: AttributeType<TorqueSpec> = {
  expects: 'a torque or its passes, as in `25 N·m` or `20 N·m, 50 N·m, +90°`',
  read: (text) => {
    const reading = parseTorque(text);
    return reading.ok ? good(reading.passes) : bad(reading.message, reading.suggestion);
  },
};

/** What lies between thread and nut. */
export const friction: AttributeType<StatedFriction> = {
  expects: '`dry`, `oiled`, `waxed`, or a nut factor, as in `0.16`',
  read: (text) => {
    const reading = parseFriction(text);
    return reading.ok ? good(reading.friction) : bad(reading.message, reading.suggestion);
  },
};

/** When something is looked at again. */
export const recheck: AttributeType<Recheck> = {
  expects: 'a distance, hours or a time, as in `500 km`, `20 h`, `500 km or 3 months`',
  read: (text) => {
    const reading = parseRecheck(text);
    return reading.ok ? good(reading.recheck) : bad(reading.message);
  },
};

/** What a tool must fit. */
export const drive: AttributeType<Drive> = {
  expects: 'a drive, as in `hex 13`, `T25`, `PH2`',
  read: (text) => {
    const reading = parseDrive(text);
    return reading.ok ? good(reading.drive) : bad(reading.message, reading.suggestion);
  },
};

/** A standard that fixes the width across flats, by the name that it is cited by. */
export const widthStandard: AttributeType<string> = {
  expects: 'a standard for the width across flats, as in `ISO 4014`, `ASME B18.2.1`, `JIS small series`',
  read: (text) => {
    const found = widthStandardNamed(text);
    if (found) return good(text.trim());
    return bad(
      `"${text}" is no standard known here for the width across flats`,
      nearest(text, widthStandardNames)[0],
    );
  },
};

/** A screw thread. */
export const thread: AttributeType<Thread> = {
  expects: 'a thread, as in `M8x1.25` or `1/4-20`',
  read: (text) => {
    const reading = parseThread(text);
    return reading.ok ? good(reading.thread) : bad(reading.message, reading.suggestion);
  },
};

/** The size of a wire. */
export const wire: AttributeType<Wire> = {
  expects: 'a size of wire, as in `2.5 mm²` or `14 AWG`',
  read: (text) => {
    const reading = parseWire(text);
    return reading.ok ? good(reading.wire) : bad(reading.message, reading.suggestion);
  },
};

/** Part of a picture: left, upper, right and lower edge as percentages. */
export const pictureBox: AttributeType<PictureBox> = {
  expects: 'left, upper, right and lower edge in percent, as in `10%,20%,60%,80%`',
  read: (text) => {
    const [left, top, right, bottom, ...more] = text.split(',').map(percent);
    if (
      left === undefined ||
      top === undefined ||
      right === undefined ||
      bottom === undefined ||
      more.length
    ) {
      return bad(`"${text}" was found where four percentages were expected, as in "10%,20%,60%,80%"`);
    }
    if ([left, top, right, bottom].some(Number.isNaN) || left >= right || top >= bottom) {
      return bad(`"${text}" is no part of a picture; left before right and upper before lower, 0% to 100%`);
    }
    return good({ left, top, width: right - left, height: bottom - top });
  },
};

/** A point in a picture. */
export const picturePoint: AttributeType<PicturePlace> = {
  expects: 'how far across and how far down, as in `31%,44%`',
  read: (text) => {
    const [x, y, ...more] = text.split(',').map(plainPercent);
    return x === undefined || y === undefined || more.length || Number.isNaN(x) || Number.isNaN(y)
      ? bad(`"${text}" was found where a point in the picture was expected, as in "31%,44%"`)
      : good({ x, y });
  },
};

/** Points in a picture. */
export const picturePoints: AttributeType<readonly PicturePlace[]> = {
  expects: 'points in the picture set apart by spaces, as in `31%,44% 62%,44%`',
  read: (text, at) => {
    const places: PicturePlace[] = [];
    for (const word of placedWords(text, at)) {
      const place = picturePoint.read(word.value, word.at);
      if (!place.ok) return bad(place.message, undefined, word.at);
      places.push(place.value);
    }
    return places.length > 0
      ? good(places)
      : bad('the value is empty; points in the picture were expected, as in "31%,44% 62%,44%"');
  },
};

function percent(text: string): number {
  const value = plainPercent(text);
  return value >= 0 && value <= 1 ? value : Number.NaN;
}

function plainPercent(text: string): number {
  const match = /^\s*(-?\d+(?:\.\d+)?)%\s*$/.exec(text);
  return match ? Number(match[1]) / 100 : Number.NaN;
}

/** The words of a value, each with its own place. */
export function placedWords(text: string, at: Span): Written<string>[] {
  // A character reference in the value makes the text shorter than its place; then the whole is pointed at.
  const exact = at.end - at.start === text.length;
  return [...text.matchAll(/\S+/g)].map((match) => ({
    value: match[0],
    at: exact
      ? { file: at.file, start: at.start + match.index, end: at.start + match.index + match[0].length }
      : at,
  }));
}
