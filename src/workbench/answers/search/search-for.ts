import { planStore } from '../../../store';
import { openSheet } from '../open-sheet';
import { changeDraft, startAfresh } from './search-store';

/** Opens the search for one pair. */
export function searchFor(pair: string): void {
  startAfresh(planStore.getState().openedAs);
  changeDraft({ scope: pair });
  openSheet('search');
}
