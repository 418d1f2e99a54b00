import { formatLength, lengthParts, type Units } from '../units/index.ts';
import { lengthInWords } from './length-words.ts';

export interface FigureProps {
  /** Metres. */
  readonly m: number;
  readonly units: Units;
  /** `large` (default) is read at arm's length; `text` sits in a sentence. */
  readonly size?: 'large' | 'text';
}

/**
 * A length in large figures with its fraction small and raised. Its text is exactly `formatLength`'s; a screen reader
 * hears it in words.
 */
export function Figure({ m, units, size = 'large' }: FigureProps) {
  if (!Number.isFinite(m)) return <span class={`figure figure-${size}`}>{formatLength(m, units)}</span>;
  const { sign, whole, fraction, mark } = lengthParts(m, units);
  const unitWord = /[a-z]/.test(mark);
  return (
    <span class={`figure figure-${size}`} role="img" aria-label={lengthInWords(m, units)}>
      {sign}
      {whole}
      {fraction && (
        <>
          {whole && ' '}
          <span class="figure-fraction">{fraction}</span>
        </>
      )}
      <span class={unitWord ? 'figure-unit' : undefined}>{mark}</span>
    </span>
  );
}
