import { type CrossDrive, type Drive, type FlatsDrive, formatDrive } from './drives.ts';

/** A tool that goes on, or nearly, though it is not the fastener's own. */
export interface NearFit {
  readonly near: Drive;
  /** True where the trade lives with it (a warning); false where it spoils the fastener (an error). */
  readonly accepted: boolean;
  /** Why, in a technician's words, without a closing full stop. */
  readonly message: string;
}

/** Whether a tool fits a fastener. */
export type Fit = 'fits' | NearFit | 'no';

/** Judges a tool's drive against a fastener's. */
export function toolFitsDrive(tool: Drive, item: Drive): Fit {
  if (isFlats(tool) && isFlats(item)) return flatsFit(tool, item);
  if (tool.kind === 'cross' && item.kind === 'cross') return crossFit(tool, item);
  if ('number' in tool && 'number' in item) return numberFit(tool, item);
  return tool.kind === item.kind ? 'fits' : 'no';
}

function isFlats(drive: Drive): drive is FlatsDrive {
  return 'across' in drive;
}

/** How much tighter than nominal a tool may be and still go on, in mm: 5/16 in on 8 mm does (common practice, no source). */
const TIGHT = 0.07;
/** How loose a tool may be, as a share of the flats, before it rounds them: 7/16 in on 11 mm (common practice, no source). */
const LOOSE = 0.011;
/** Beyond this share nobody would take the one for the other. */
const NEAR = 0.06;

function flatsFit(tool: FlatsDrive, item: FlatsDrive): Fit {
  const shapeFits = tool.kind === item.kind || (tool.kind === 'twelve-point' && item.kind === 'hexagon');
  if (!shapeFits) return 'no';
  // A key goes into its socket, so there the smaller tool is the loose one.
  const inside = item.kind === 'hexagon-socket' || item.kind === 'square-flats';
  const slack = inside ? item.across - tool.across : tool.across - item.across;
  const size = Math.abs(slack).toFixed(2);
  const pair = `${formatDrive(tool)} tool on the ${formatDrive(item)}`;
  if (Math.abs(slack) < 0.005) return 'fits';
  if (Math.abs(slack) > NEAR * item.across) return 'no';
  if (slack < -TIGHT) return near(tool, false, `the ${pair} is ${size} mm too tight and does not go on`);
  if (slack > LOOSE * item.across)
    return near(tool, false, `the ${pair} is ${size} mm too loose and rounds it`);
  return near(
    tool,
    true,
    `the ${pair} is ${size} mm too ${slack < 0 ? 'tight' : 'loose'}; the trade accepts it`,
  );
}

function crossFit(tool: CrossDrive, item: CrossDrive): Fit {
  if (tool.form === item.form && tool.number === item.number) return 'fits';
  const pair = `${formatDrive(tool)} tool in a ${formatDrive(item)} recess`;
  if (tool.number !== item.number) {
    return Math.abs(tool.number - item.number) > 1
      ? 'no'
      : near(tool, false, `a ${pair} is the wrong size and climbs out`);
  }
  // A JIS driver has no cam-out shoulder and seats in a PH recess; the other way round it rides up.
  if (tool.form === 'JIS' && item.form === 'PH')
    return near(tool, true, `a ${pair} seats; the trade accepts it`);
  return near(tool, false, `a ${pair} does not seat: it climbs out and spoils the recess`);
}

function numberFit(
  tool: Drive & { readonly number: number },
  item: Drive & { readonly number: number },
): Fit {
  const lobed = tool.kind.endsWith('hexalobular') && item.kind.endsWith('hexalobular');
  const outside = tool.kind === 'external-hexalobular' || item.kind === 'external-hexalobular';
  if (tool.kind !== item.kind && (!lobed || outside)) return 'no';
  if (tool.number === item.number) {
    if (tool.kind === item.kind || tool.kind === 'security-hexalobular') return 'fits';
    return near(
      tool,
      false,
      `a plain ${formatDrive(tool)} tool does not enter a recess with a pin; take ${formatDrive(item)}`,
    );
  }
  if (Math.abs(tool.number - item.number) > 5) return 'no';
  const fault = tool.number < item.number ? 'is too small and spoils it' : 'is too large and does not go in';
  if (outside)
    return near(tool, false, `the ${formatDrive(tool)} tool is not the size of ${formatDrive(item)}`);
  return near(tool, false, `a ${formatDrive(tool)} tool in a ${formatDrive(item)} recess ${fault}`);
}

function near(tool: Drive, accepted: boolean, message: string): NearFit {
  return { near: tool, accepted, message };
}
