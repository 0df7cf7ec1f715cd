import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { repository } from '../driver.ts';

/** A package that an installed Baybook stands on. */
export interface RuntimePackage {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
}

interface LockedPackage {
  readonly version?: string;
  readonly dev?: boolean;
  readonly devOptional?: boolean;
  readonly optional?: boolean;
}

/** Packages whose own description names no licence, or not which, with what their README or their licence says. */
const saidElsewhere: { readonly [name: string]: string } = {
  'png-js': 'MIT',
  format: 'MIT',
  duck: 'BSD-2-Clause',
};

/** The licence of a package, by the description in its folder. */
export function licenceOf({ name, license }: { readonly name: string; readonly license?: string }): string {
  return saidElsewhere[name] ?? license ?? 'none named';
}

/** Every package that comes with Baybook, once for each version, by name. What only one kind of machine gets is left out. */
export function runtimePackages(): readonly RuntimePackage[] {
  const { packages } = JSON.parse(readFileSync(join(repository, 'package-lock.json'), 'utf8')) as {
    readonly packages: { readonly [path: string]: LockedPackage };
  };
  const shipped = Object.entries(packages).filter(
    ([path, { dev, devOptional, optional }]) => path !== '' && !dev && !devOptional && !optional,
  );
  const described = shipped.map(([path]) => {
    const text = readFileSync(join(repository, path, 'package.json'), 'utf8');
    const description = JSON.parse(text);
    const { name, version } = description;
    return { name, version, licence: licenceOf(description) };
  });
  return described.sort((a, b) => (a.name < b.name ? -1 : 1));
}
