import { placeOf } from '../../../plan/index.ts';
import type { Drawn } from '../../../ui/index.ts';
import type { useJobBook } from '../../job-book.ts';

/** A and B where the log has them, plan frame; nothing while they have no place. */
export const drawnStakes = ({ site }: ReturnType<typeof useJobBook>['situation']): Pick<Drawn, 'stakes'> =>
  site ? { stakes: { a: placeOf(site.a), b: placeOf(site.b) } } : {};
