import { button, make, say } from '../bay/elements.ts';
import { drawn, photographOf } from './photograph.ts';
import type { RecordKeeper } from './record-keeper.ts';

/** Pixels along the longer side of a photograph beside the place that asked for it. */
const BESIDE = 220;

/**
 * A place that asks for photographs: a button that opens the camera, and those that were taken.
 *
 * @param key of the place
 * @param shows what a photograph must show, asked when one is taken
 * @param more the side that stands on the button where there are two, and what is told of each photograph
 */
export function cameraFor(
  records: RecordKeeper,
  key: string,
  shows: () => string,
  { side = '', taken = () => {} }: { readonly side?: string; readonly taken?: () => void } = {},
): HTMLElement {
  const input = make('input', '');
  input.type = 'file';
  input.accept = 'image/*';
  input.setAttribute('capture', 'environment');
  const unseen = make('span', 'unseen');
  const said = make('p', 'vehicle-told');
  said.setAttribute('role', 'status');
  const list = make('ul', 'vehicle-photographs');
  input.addEventListener('focus', () => say(unseen, `: ${shows()}`));
  input.addEventListener('change', () => {
    const [file] = input.files ?? [];
    if (!file) return;
    say(said, 'The photograph is made smaller …');
    void photographOf(file, key, shows()).then((photograph) => {
      // The same picture may be chosen again.
      input.value = '';
      say(said, photograph ? '' : 'This picture cannot be read here. Take it as JPEG.');
      if (!photograph) return;
      records.add(photograph);
      taken();
    });
  });
  let shown = '';
  records.onChange(({ photographs }) => {
    const own = photographs.filter((one) => one.key === key);
    say(unseen, `: ${shows()}`);
    const ids = own.map(({ id }) => id).join(' ');
    // Drawn again they would flicker at every letter that is typed.
    if (ids === shown) return;
    shown = ids;
    list.replaceChildren(
      ...own.map((photograph) =>
        make(
          'li',
          '',
          drawn(photograph, BESIDE),
          button('quiet-button', 'Drop it', () => records.drop(photograph.id)),
        ),
      ),
    );
  });
  return make(
    'div',
    'vehicle-camera',
    make('label', 'vehicle-take', side === '' ? 'Photograph' : `Photograph, ${side}`, unseen, input),
    said,
    list,
  );
}

/** A camera at each photograph that the guide asks for; one that is taken ticks its line. */
export function evidenceCameras(records: RecordKeeper): readonly HTMLElement[] {
  return [...document.querySelectorAll<HTMLElement>('[data-evidence^="photo "]')].flatMap((line) => {
    const place = line.closest('.step')?.id ?? line.closest('.part')?.id ?? '';
    return [...line.querySelectorAll<HTMLInputElement>('.bay-box input')].map((box) => {
      const asked = (box.getAttribute('aria-label') ?? '').replace(/^Seen to: (?:Photograph: )?/, '');
      const side = box.parentElement?.querySelector('.bay-side')?.textContent ?? '';
      const camera = cameraFor(records, `${place} ${asked}`, () => asked, {
        side,
        taken: () => {
          if (!box.checked) box.click();
        },
      });
      line.append(camera);
      return camera;
    });
  });
}
