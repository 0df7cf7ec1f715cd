import { describe, expect, test } from 'vitest';
import { toolFitsDrive } from '../../src/trade/drive-fit.ts';
import { drive, plain } from './read.ts';

function judge(tool: string, item: string): string {
  const result = toolFitsDrive(drive(tool), drive(item));
  return typeof result === 'string'
    ? result
    : `${result.accepted ? 'warning' : 'error'}: ${plain(result.message)}`;
}

describe('a tool fits its own drive and no other', () => {
  test.each([
    ['hex 13', 'hex 13', 'fits'],
    ['twelve-point 13', 'hex 13', 'fits'],
    ['hex 13', 'twelve-point 13', 'no'],
    ['hex 13', 'hex-socket 13', 'no'],
    ['hex 7', 'hex 10', 'no'],
    ['T15', 'T15', 'fits'],
    ['T15 security', 'T15', 'fits'],
    ['E10', 'T10', 'no'],
    ['T15', 'square 2', 'no'],
    ['slotted', 'PH2', 'no'],
    ['push-in', 'push-in', 'fits'],
    ['push-in', 'pull-out', 'no'],
    ['PH1', 'PH3', 'no'],
  ])('%s on %s', (tool, item, expected) => expect(judge(tool, item)).toBe(expected));
});

// Common practice, no source: which inch and millimetre sizes stand in for each other.
describe('near fits that the trade accepts are warnings', () => {
  test.each([
    [
      'hex 5/16 in',
      'hex 8',
      'warning: the 5/16 in hexagon tool on the 8 mm hexagon is 0.06 mm too tight; the trade accepts it',
    ],
    [
      'hex 8',
      'hex 5/16 in',
      'warning: the 8 mm hexagon tool on the 5/16 in hexagon is 0.06 mm too loose; the trade accepts it',
    ],
    [
      'hex 3/4 in',
      'hex 19',
      'warning: the 3/4 in hexagon tool on the 19 mm hexagon is 0.05 mm too loose; the trade accepts it',
    ],
    [
      'hex 19',
      'hex 3/4 in',
      'warning: the 19 mm hexagon tool on the 3/4 in hexagon is 0.05 mm too tight; the trade accepts it',
    ],
    [
      'hex 7/16 in',
      'hex 11',
      'warning: the 7/16 in hexagon tool on the 11 mm hexagon is 0.11 mm too loose; the trade accepts it',
    ],
    ['JIS2', 'PH2', 'warning: a JIS2 tool in a PH2 recess seats; the trade accepts it'],
  ])('%s on %s', (tool, item, expected) => expect(judge(tool, item)).toBe(expected));

  test('16 mm on 5/8 in, but not the other way round', () => {
    expect(judge('hex 16', 'hex 5/8 in')).toMatch(/^warning/);
    expect(judge('hex 5/8 in', 'hex 16')).toMatch(/^error: .* does not go on$/);
  });
});

describe('near fits that spoil the fastener are errors', () => {
  test.each([
    [
      'hex 1/2 in',
      'hex 13',
      'error: the 1/2 in hexagon tool on the 13 mm hexagon is 0.30 mm too tight and does not go on',
    ],
    [
      'hex 13',
      'hex 1/2 in',
      'error: the 13 mm hexagon tool on the 1/2 in hexagon is 0.30 mm too loose and rounds it',
    ],
    [
      'hex 3/8 in',
      'hex 10',
      'error: the 3/8 in hexagon tool on the 10 mm hexagon is 0.48 mm too tight and does not go on',
    ],
    [
      'hex-socket 3/16 in',
      'hex-socket 5',
      'error: the 3/16 in hexagon socket tool on the 5 mm hexagon socket is 0.24 mm too loose and rounds it',
    ],
    ['T15', 'T20', 'error: a T15 tool in a T20 recess is too small and spoils it'],
    ['T25', 'T20', 'error: a T25 tool in a T20 recess is too large and does not go in'],
    ['T15', 'T15 security', 'error: a plain T15 tool does not enter a recess with a pin; take T15 security'],
    ['PH1', 'PH2', 'error: a PH1 tool in a PH2 recess is the wrong size and climbs out'],
    ['PH2', 'JIS2', 'error: a PH2 tool in a JIS2 recess does not seat: it climbs out and spoils the recess'],
    ['PZ2', 'PH2', 'error: a PZ2 tool in a PH2 recess does not seat: it climbs out and spoils the recess'],
    ['PH2', 'PZ2', 'error: a PH2 tool in a PZ2 recess does not seat: it climbs out and spoils the recess'],
    ['E12', 'E10', 'error: the E12 tool is not the size of E10'],
  ])('%s on %s', (tool, item, expected) => expect(judge(tool, item)).toBe(expected));
});
