import { type PieceBlock, piece } from '../page';
import type { PrintedWords } from '../words/use-words';

export interface Chapter {
  /** Of the block it begins with. */
  id: string;
  title: string;
}

/** What the book holds, with the page each chapter begins on. */
export const contentsBlock = (chapters: readonly Chapter[], { t }: PrintedWords): PieceBlock =>
  piece('contents-list', ({ pageOf }) => (
    <ol className="book-contents">
      {chapters.map(({ id, title }) => (
        <li key={id}>
          <span>{title}</span>
          <span className="book-leader" />
          <span className="number">{t('book.page', { page: pageOf(id) ?? '–' })}</span>
        </li>
      ))}
    </ol>
  ));
