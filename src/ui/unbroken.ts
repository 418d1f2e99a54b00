import type { ComponentChildren } from 'preact';

/** `22′ 0 5/16″`, `22′ 6″`, `5 1/16″`: feet, inches and a fraction, with at least one space between them. */
const FEET_AND_INCHES = /\d+′ \d+(?: \d+\/\d+)?″|\d+ \d+\/\d+″/g;
/** `5.246 m`, `12 mm`, `18.53 ft`. */
const METRES_OR_FEET = /\d (?=(?:mm|m|ft)(?![\p{L}\p{N}]))/gu;
const NO_BREAK = '\u00a0';

/** The same words with every length in one piece: the spaces inside one are such as no line breaks at. */
export const unbroken = (text: string): string =>
  text
    .replace(FEET_AND_INCHES, (length) => length.replaceAll(' ', NO_BREAK))
    .replace(METRES_OR_FEET, (end) => end.replace(' ', NO_BREAK));

/** The words among what a part holds, each as `unbroken` has them; parts within it see to their own. */
export function unbrokenIn(children: ComponentChildren): ComponentChildren {
  if (typeof children === 'string') return unbroken(children);
  return Array.isArray(children) ? children.map(unbrokenIn) : children;
}
