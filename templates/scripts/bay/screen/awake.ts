import { say } from '../elements.ts';

/** Keeps the screen on while the technician wants it, and says in words whether it stays on. */
export function startAwake(toggle: HTMLButtonElement, states: readonly Element[]): void {
  let wanted = false;
  let lock: WakeLockSentinel | null = null;

  const show = (words: string): void => {
    toggle.setAttribute('aria-pressed', String(wanted));
    for (const state of states) say(state, words);
  };
  const told = () => (lock ? 'The screen stays on.' : 'The screen may go dark.');
  const take = async (): Promise<void> => {
    try {
      lock = await navigator.wakeLock.request('screen');
      lock.addEventListener('release', () => {
        lock = null;
        show(told());
      });
      show(told());
    } catch {
      show(
        'The screen may go dark: the device does not let this page keep it on, perhaps to save its battery.',
      );
    }
  };

  if (!('wakeLock' in navigator)) {
    toggle.hidden = true;
    show(window.isSecureContext ? unable : insecure);
    return;
  }
  show(told());
  toggle.addEventListener('click', () => {
    wanted = !wanted;
    if (wanted) void take();
    else void lock?.release();
    if (!wanted) show(told());
  });
  // The browser lets go whenever the page is out of sight.
  document.addEventListener('visibilitychange', () => {
    if (wanted && !lock && document.visibilityState === 'visible') void take();
  });
}

const insecure =
  'The screen may go dark: over plain http a browser lets no page keep it on. Set the device to stay on longer.';
const unable =
  'The screen may go dark: this browser lets no page keep it on. Set the device to stay on longer.';
