import { diskFiles } from '../../shop/files/disk-files.ts';
import { openWorkspace } from '../../shop/open-workspace.ts';
import { folderStore, type StorePlace } from '../../store/store.ts';
import { readFonts } from '../fonts.ts';
import { readKit } from '../kit.ts';
import { sitePages } from '../site-pages.ts';
import { type TurnGround, turnGround } from './turn.ts';

/** All that a thread needs to ready a ground of its own, as plain data. */
export interface GroundPlan {
  /** The folder of the workspace. */
  readonly root: string;
  readonly store: StorePlace;
  readonly basis: string;
  /** Whether pages are made as well. */
  readonly make: boolean;
}

/** Reads what guides share, and readies turns on it. */
export async function openGround({
  root,
  store: { folder, usedAt },
  basis,
  make,
}: GroundPlan): Promise<TurnGround> {
  const files = diskFiles(root);
  const store = folderStore(folder, new Date(usedAt));
  const fonts = await readFonts();
  const workspace = await openWorkspace(files, store, fonts);
  const kit = make ? await readKit(files, workspace.shop.files.keys(), fonts) : null;
  return turnGround({ workspace, store, basis, kit, pageOf: sitePages(workspace) });
}
