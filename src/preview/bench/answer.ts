import type { IncomingMessage } from 'node:http';
import * as z from 'zod';
import { MAX_PICTURE_BYTES } from '../../pictures/limits.ts';
import { benchPage } from '../pages.ts';
import { benchFolder } from '../paths.ts';
import type { Done, PictureBench } from './bench.ts';

/** What the bench answers. */
export interface BenchReply {
  readonly status: number;
  readonly type: string;
  readonly body: string | Uint8Array;
}

/** The most that an order may hold, in bytes: a figure is text. */
const MOST_TEXT = 200_000;

const text = z.string().max(4000);
const mark = z.object({ letter: text.min(1), at: text });
const figure = z.object({
  src: text,
  caption: text,
  alt: text,
  shows: text,
  crop: text,
  blur: text,
  zoom: text,
  marks: z.array(mark.extend({ text })).max(100),
});
const writeOrder = z.object({
  edition: text,
  figure,
  over: z.number().int().nonnegative().nullable(),
  after: z.number().int().nonnegative().nullable(),
});
const overlayOrder = z.object({
  marks: z.array(mark).max(100),
  width: z.number().positive(),
  height: z.number().positive(),
  crop: text,
});

const pixel = z.object({ x: z.number(), y: z.number() });
const pressedLength = z.object({ from: pixel, to: pixel, typed: text });
const panelOrder = z.object({
  known: z.tuple([pressedLength, pressedLength]),
  corners: z.array(pixel).max(200),
  zero: z.number().int().nonnegative(),
  within: z.number().positive(),
});
const outlineOrder = z.object({
  edition: text,
  src: text,
  pressed: panelOrder,
  panel: text,
  face: z.enum(['outside', 'inside']),
  after: z.number().int().nonnegative(),
});

/** Answers what is asked of the bench, or told to it. Only what its own pages send comes here. */
export async function answerBench(
  request: IncomingMessage,
  url: URL,
  bench: PictureBench,
): Promise<BenchReply> {
  const guide = url.searchParams.get('guide') ?? '';
  const src = url.searchParams.get('src') ?? '';
  const what = url.pathname.slice(benchFolder.length);
  if (request.method !== 'POST') return read(what, guide, src, bench);
  switch (what) {
    case 'write':
      return orders(request, writeOrder, (order) => bench.write(guide, order));
    case 'overlay':
      return orders(request, overlayOrder, async (order) => ({ ok: true, value: bench.overlay(order) }));
    case 'measure':
      return orders(request, panelOrder, async (order) => bench.measure(order));
    case 'outline':
      return orders(request, outlineOrder, (order) => bench.outline(guide, order));
    case 'undo':
      return told(await bench.undo(guide));
    case 'turn':
      return told(await bench.turn(guide, src));
    case 'keep': {
      const bytes = await bytesOf(request, MAX_PICTURE_BYTES);
      return told(bytes ? await bench.keep(guide, src, bytes) : tooLarge(src));
    }
    default:
      return nothing;
  }
}

async function read(what: string, guide: string, src: string, bench: PictureBench): Promise<BenchReply> {
  if (what === 'picture') {
    const picture = await bench.show(guide, src);
    return picture ? { status: 200, type: picture.type, body: picture.bytes } : nothing;
  }
  const view = what === '' || what === 'view' ? await bench.look(guide) : null;
  if (!view) return nothing;
  return what === '' ? { status: 200, type: 'text/html', body: benchPage(guide) } : json(200, view);
}

async function orders<T>(
  request: IncomingMessage,
  shape: z.ZodType<T>,
  carryOut: (order: T) => Promise<Done<unknown>>,
): Promise<BenchReply> {
  const bytes = await bytesOf(request, MOST_TEXT);
  const order = shape.safeParse(parsed(bytes));
  if (!order.success) return told({ ok: false, problem: 'this is no order that the bench knows' });
  return told(await carryOut(order.data));
}

function parsed(bytes: Uint8Array | null): unknown {
  try {
    return bytes && JSON.parse(Buffer.from(bytes).toString());
  } catch {
    return null;
  }
}

function told(done: Done<unknown>): BenchReply {
  return done.ok ? json(200, done.value) : json(409, { problem: done.problem });
}

function json(status: number, value: unknown): BenchReply {
  return { status, type: 'application/json', body: JSON.stringify(value) };
}

const nothing: BenchReply = { status: 404, type: 'text/plain', body: 'the bench has nothing there' };

function tooLarge(name: string) {
  const most = MAX_PICTURE_BYTES / 1024 / 1024;
  return {
    ok: false,
    problem: `${name} is too large; at most ${most} MB are read, so scale it down`,
  } as const;
}

/** What was sent; `null` where it is more than may be. */
async function bytesOf(request: IncomingMessage, most: number): Promise<Uint8Array | null> {
  const parts: Buffer[] = [];
  let length = 0;
  for await (const part of request) {
    length += part.length;
    if (length > most) return null;
    parts.push(part);
  }
  return Buffer.concat(parts);
}
