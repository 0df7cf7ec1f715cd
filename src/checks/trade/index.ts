import type { Rule } from '../rule.ts';
import { cableEndUnfit } from './cable-end-unfit.ts';
import { cableEndsDiffer } from './cable-ends-differ.ts';
import { circuitIncomplete } from './circuit-incomplete.ts';
import { circuitMarginal } from './circuit-marginal.ts';
import { clearanceHoleLarge } from './clearance-hole-large.ts';
import { clearanceHoleSmall } from './clearance-hole-small.ts';
import { cutterMissing } from './cutter-missing.ts';
import { fuseUnsafe } from './fuse-unsafe.ts';
import { gradeUnknown } from './grade-unknown.ts';
import { holeBitMismatch } from './hole-bit-mismatch.ts';
import { patternImpossible } from './pattern-impossible.ts';
import { placeTakenTwice } from './place-taken-twice.ts';
import { ratingExceeded } from './rating-exceeded.ts';
import { rivetNutHole } from './rivet-nut-hole.ts';
import { settingOutsideWrench } from './setting-outside-wrench.ts';
import { terminalOpen } from './terminal-open.ts';
import { toolMisfit } from './tool-misfit.ts';
import { toolMissing } from './tool-missing.ts';
import { toolNearFit } from './tool-near-fit.ts';
import { torqueContradicted } from './torque-contradicted.ts';
import { torqueImplausible } from './torque-implausible.ts';
import { torqueOutsideWrench } from './torque-outside-wrench.ts';
import { torqueOverProof } from './torque-over-proof.ts';
import { torquePassesFall } from './torque-passes-fall.ts';
import { torqueUnstated } from './torque-unstated.ts';
import { torqueWithSpanner } from './torque-with-spanner.ts';
import { torqueWrenchMissing } from './torque-wrench-missing.ts';
import { typeDriveClash } from './type-drive-clash.ts';
import { voltageDropHigh } from './voltage-drop-high.ts';
import { widthClash } from './width-clash.ts';
import { widthNotStandard } from './width-not-standard.ts';
import { wireOverloaded } from './wire-overloaded.ts';
import { wrenchLengthMissing } from './wrench-length-missing.ts';

/** What a lead technician checks by heart: tools that fit, torques that hold, holes, ratings and feeds. */
export const tradeRules: readonly Rule[] = [
  cableEndUnfit,
  cableEndsDiffer,
  circuitIncomplete,
  circuitMarginal,
  clearanceHoleLarge,
  clearanceHoleSmall,
  cutterMissing,
  fuseUnsafe,
  gradeUnknown,
  holeBitMismatch,
  patternImpossible,
  placeTakenTwice,
  ratingExceeded,
  rivetNutHole,
  terminalOpen,
  toolMisfit,
  toolMissing,
  toolNearFit,
  torqueContradicted,
  torqueImplausible,
  torqueOutsideWrench,
  torqueOverProof,
  torquePassesFall,
  torqueUnstated,
  torqueWithSpanner,
  torqueWrenchMissing,
  typeDriveClash,
  voltageDropHigh,
  widthClash,
  wireOverloaded,
  settingOutsideWrench,
  widthNotStandard,
  wrenchLengthMissing,
];
