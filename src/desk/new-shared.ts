import { fileSchemas } from '../handbook/file-schemas.ts';
import { fillIn } from '../shop/marked-places.ts';
import { type NewOption, optionLines, yamlValue } from './facts.ts';
import { lines } from './new-guide.ts';

/** What is known of a shop before its workspace is written. */
interface NewShop {
  readonly name: string;
  readonly units: 'metric' | 'us';
}

/** The folder of a workspace in which editors find what its YAML files may say; guides never lie in one with a dot. */
const schemaFolder = '.schemas';

/** A JSON Schema for each YAML file of a workspace, by the path at which it is kept. */
export function newSchemas(): ReadonlyMap<string, string> {
  return new Map(
    [...fileSchemas()].map(([name, schema]) => [schemaPathOf(name), `${JSON.stringify(schema, null, 1)}\n`]),
  );
}

function schemaPathOf(name: string): string {
  return `${schemaFolder}/${name.replace(/\.yaml$/, '.json')}`;
}

/** The line by which an editor finds the schema of a file, as the usual servers for YAML read it. */
function schemaLine(name: string): string {
  return `# yaml-language-server: $schema=${schemaPathOf(name)}`;
}

/** The files of a new workspace, by path: the shop, a crib to begin with, two kinds of fastener, and their schemas. */
export function newWorkspace({ name, units }: NewShop): ReadonlyMap<string, string> {
  return new Map([
    [
      'shop.yaml',
      lines(
        schemaLine('shop.yaml'),
        '# The shop: what holds for all its guides.',
        `name: ${yamlValue(name)}`,
        `units: ${units}`,
        `papers: [${units === 'us' ? 'Letter' : 'A4'}]`,
        'crew: 2',
      ),
    ],
    [
      'tools.yaml',
      lines(
        schemaLine('tools.yaml'),
        `# ${fillIn} what the shop owns: take out what it does not, add the rest, and strike this line.`,
        '# Keys are ids, which guides name. "baybook explain tool" tells what else a tool may say.',
        'eye-protection: {name: Eye protection, wear: yes}',
        'gloves: {name: Work gloves, wear: yes}',
        'trim-lever: {name: Trim lever, drive: pull-out}',
        'bit-ph2: {name: PH2 bit, drive: PH2}',
        'bit-t20: {name: T20 bit, drive: T20}',
        'bit-t25: {name: T25 bit, drive: T25}',
        'bit-t30: {name: T30 bit, drive: T30}',
        'socket-8: {name: 8 mm socket, drive: hex 8}',
        'socket-10: {name: 10 mm socket, drive: hex 10}',
        'socket-13: {name: 13 mm socket, drive: hex 13}',
      ),
    ],
    [
      'fasteners.yaml',
      lines(
        schemaLine('fasteners.yaml'),
        '# Kinds of fastener. "baybook explain fastener" tells what else one may say.',
        'trim-clip: {name: Trim clip, drive: pull-out, release: "Set the lever beside the clip and pull square to the panel."}',
        'panel-screw: {name: Panel screw, drive: T25}',
      ),
    ],
    ...newSchemas(),
  ]);
}

/** The text of a new platform. */
export function newPlatform(title: string, options: readonly NewOption[]): string {
  return lines(
    '---',
    `title: ${yamlValue(title)}`,
    ...optionLines(options),
    '---',
    '',
    `${fillIn} which vehicles this is, from which year to which, and how to tell them from others.`,
    '',
    '## What to know before you start {#know}',
    '',
    `${fillIn} where the battery and the fuses are, where the vehicle is jacked, and what belongs to its maker's own instructions.`,
  );
}

/** The text of a new shared procedure. */
export function newProcedure(id: string, title: string): string {
  return lines(
    '---',
    `title: ${yamlValue(title)}`,
    '---',
    '',
    `${fillIn} what it needs and what comes off, a line each, as in \`::tool{#bit-t25}\` and \`::part[Cover]{#cover}\``,
    '',
    `::step[${title.replace(/[[\]]/g, '\\$&')}]{#${id}-first}`,
    '',
    `${fillIn} what the hands do, as in \`:remove[cover].\``,
  );
}
