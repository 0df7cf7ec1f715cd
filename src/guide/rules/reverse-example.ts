/** A guide that takes off a cover, for the examples of rules; `refit` follows the strip-down. */
export function reverseExample(refit: string, clip = ''): string {
  return `## Parts {#parts}

::part[Cover]{#cover}
::fastener[Cover clip]{#clip holds=cover${clip}}

## Strip down {#strip-down}

::step[Take off the cover]{#cover-off}

:remove[clip] and :remove[cover].

${refit}`;
}

/** The refit that undoes it. */
export const refitExample = '## Refit {#refit}\n\n::reverse{of=strip-down}\n';
