import { openWorkspace, type Workspace } from '../shop/open-workspace.ts';
import { readFonts } from './fonts.ts';
import { type TurnGround, turnGround } from './guides/turn.ts';
import { readKit } from './kit.ts';
import { sitePages } from './site-pages.ts';
import { basisOf, type Work } from './work.ts';

/** A workspace that has been read, and the ground on which its guides take their turns. */
export interface OpenWork {
  readonly workspace: Workspace;
  readonly ground: TurnGround;
}

/**
 * Reads what the guides of a workspace share.
 *
 * @param make whether the guides make pages as well
 */
export async function openWork(work: Work, identity: string, make: boolean): Promise<OpenWork> {
  const { files, store } = work;
  const fonts = await readFonts();
  const workspace = await openWorkspace(files, store, fonts);
  const basis = await basisOf(work, identity, workspace.shop.settings);
  const kit = make ? await readKit(files, workspace.shop.files.keys(), fonts) : null;
  const ground = turnGround({ workspace, store, basis, kit, pageOf: sitePages(workspace) });
  return { workspace, ground };
}
