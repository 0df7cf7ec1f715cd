import { Refused } from './refused.ts';

/** A group code and its value (DXF reference, "Group Codes in Numerical Order"), with its line in the file. */
export interface Group {
  readonly code: number;
  readonly value: string;
  readonly line: number;
}

/** Groups from one `0` up to the next: an entity, a table's entry, the beginning of a section. */
export interface Entity {
  readonly kind: string;
  readonly groups: readonly Group[];
  readonly line: number;
}

const CODE = /^\s*-?\d{1,5}\s*$/;

/** An ASCII DXF file as groups, up to its `EOF`. */
export function readGroups(text: string): Group[] {
  if (text.startsWith('AutoCAD Binary DXF'))
    throw new Refused('this is a binary DXF file; save it as ASCII (text) DXF');
  const lines = text.split(/\r\n|\n|\r/);
  const groups: Group[] = [];
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const code = lines[i] ?? '';
    if (!CODE.test(code)) throw new Refused('this is not an ASCII DXF file', groups.length > 0 ? i + 1 : 0);
    const value = (lines[i + 1] ?? '').trim();
    groups.push({ code: Number(code), value, line: i + 2 });
    if (Number(code) === 0 && value === 'EOF') return groups;
  }
  if (groups.length === 0) throw new Refused('this is not an ASCII DXF file');
  // Half a drawing closes to a shape too, and it is the wrong one.
  throw new Refused('the file breaks off before its end (it has no EOF); fetch it again');
}

/** The groups cut at each `0`. */
export function entitiesOf(groups: readonly Group[]): Entity[] {
  const entities: { kind: string; groups: Group[]; line: number }[] = [];
  for (const group of groups) {
    if (group.code === 0) entities.push({ kind: group.value, groups: [], line: group.line });
    else entities.at(-1)?.groups.push(group);
  }
  return entities;
}

/** The text of the first group with a code. */
export function textOf(entity: Entity, code: number): string | null {
  return entity.groups.find((group) => group.code === code)?.value ?? null;
}

/** The number of the first group with a code. */
export function numberOf(entity: Entity, code: number, otherwise?: number): number {
  const group = entity.groups.find((one) => one.code === code);
  if (!group) {
    if (otherwise !== undefined) return otherwise;
    throw new Refused(`a ${entity.kind} lacks a number (group ${code})`, entity.line);
  }
  return numeric(entity, group);
}

/** The numbers of all groups with a code, in their order. */
export function numbersOf(entity: Entity, code: number): number[] {
  return entity.groups.filter((group) => group.code === code).map((group) => numeric(entity, group));
}

export function numeric(entity: Entity, { value, line }: Group): number {
  const number = Number(value);
  if (value !== '' && Number.isFinite(number)) return number;
  throw new Refused(`a ${entity.kind} has a number that cannot be read`, line);
}
