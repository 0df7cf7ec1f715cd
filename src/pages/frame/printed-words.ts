import { capitalised } from '../../job/words/noun.ts';
import type { TradeWords } from '../../trade/words.ts';

/**
 * The words of ours that name what is worked on, its sides or its registration and stand in a layout: one table,
 * which every layout reads as `words`. What is said in sentences that are put together stands with their parts.
 */
export interface PrintedWords {
  /** Whose data come before ours; the layout says what "ours" is. */
  readonly deferral: string;
  readonly registration: string;
  readonly buildChecked: string;
  readonly handled: string;
  readonly after: string;
  readonly course: string;
  readonly allBuilds: string;
  readonly noSuchBuild: string;
  readonly platform: string;
  readonly howTheyDiffer: string;
  readonly search: string;
  readonly everyOne: string;
  readonly nothingFound: string;
  readonly rehearsal: string;
  readonly records: string;
  readonly recordsWhat: string;
  readonly recordWhat: string;
  readonly recordOf: string;
  readonly where: string;
}

/** The table in the words of a trade. */
export function printedWords({ vehicle, vehicles, registration }: TradeWords): PrintedWords {
  return {
    deferral: `The ${vehicle} maker’s data, local codes and licensed practice come before anything`,
    registration: capitalised(registration),
    buildChecked: `Build, checked on the ${vehicle}`,
    handled: `Parts of the ${vehicle} that this job handles`,
    after: `The ${vehicle} after this step`,
    course: `The ${vehicle} in the course of the job`,
    allBuilds: `All builds are shown. Words such as “only with …” say what stands for which ${vehicle}.`,
    noSuchBuild: `This guide knows no ${vehicle} that is built like this. Every build is shown.`,
    platform: `${capitalised(vehicle)} platform`,
    howTheyDiffer: `How these ${vehicles} differ`,
    search: capitalised(vehicle),
    everyOne: `Every ${vehicle}`,
    nothingFound: `Nothing found. Try fewer words, another spelling, or every ${vehicle}.`,
    rehearsal: `The whole job, done here before a ${vehicle} is touched. You lay out what it needs and say what is done next and with what, in any order that holds; what the ${vehicle} would not let you do is told at once, and why. At the end stands what went wrong, with the step that explains it.`,
    records: `Records of ${vehicles}`,
    recordsWhat: `What was found, done, measured and signed on one ${vehicle}, with its photographs. It is kept on the device that it was written on, and goes along as one file. Nothing leaves this device by itself, and no record is removed because a guide has changed.`,
    recordWhat: `A record goes from the intake to the re-check: what is damaged already, photographs, readings, torques and who signed. It stays on this device under its own number, and is saved as one file.`,
    recordOf: `Record of this ${vehicle}`,
    where: `Where on the ${vehicle}`,
  };
}
