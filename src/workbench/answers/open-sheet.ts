import { sessionStore } from '../../store';

/**
 * Opens a sheet of numbers. What it speaks of is drawn in the car as long as it is open; sheets that
 * draw more take that back themselves when they close.
 */
export function openSheet(sheet: string): void {
  sessionStore.setState({
    sheet,
    showReflections: sheet === 'reflections',
    showImage: sheet === 'image',
    showPillarView: sheet === 'view',
    showPockets: sheet === 'pockets',
  });
}
