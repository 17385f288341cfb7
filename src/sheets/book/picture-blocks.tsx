import type { PlanPicture } from '../../store/plan-pictures';
import { type Block, heading, paragraphs, piece } from '../page';
import type { PrintedWords } from '../words/use-words';
import { PictureImage } from './picture-image';

/** Two upright pictures stand on a page, mm. */
const TALLEST = 100;

/** The pictures the user added, in their order, each with its caption. `width`: mm of paper. */
export function pictureBlocks(
  pictures: readonly PlanPicture[],
  { t }: PrintedWords,
  width: number,
): Block[] {
  const title = heading('pictures', t('book.pictures'));
  if (pictures.length === 0)
    return [title, ...paragraphs('pictures-none', t('book.pictures.none'))];
  return [
    title,
    ...pictures.map((picture, place) => {
      const number = place + 1;
      const { caption } = picture;
      const scale = Math.min(width / picture.width, TALLEST / picture.height);
      const words = caption
        ? t('book.picture.captioned', { number, caption })
        : t('book.picture', { number });
      return piece(
        `picture-${picture.id}`,
        <figure className="paper-figure">
          <PictureImage
            picture={picture}
            alt={caption}
            style={{ width: `${picture.width * scale}mm`, height: `${picture.height * scale}mm` }}
          />
          <figcaption>{words}</figcaption>
        </figure>,
      );
    }),
  ];
}
