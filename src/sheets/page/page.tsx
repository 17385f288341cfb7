import type { CSSProperties, ReactNode } from 'react';
import { usePlan } from '../../store';
import { usePaperSettings } from '../settings';
import { useWords } from '../words/use-words';
import { usePaperTitle } from './paper-title';
import { FOOT, HEAD, MARGIN, PAGE_SIZES } from './sizes';

interface PageProps {
  /** From 1. */
  number: number;
  of: number;
  /** From edge to edge, without head and foot. */
  bare?: boolean;
  children: ReactNode;
}

/** One sheet of paper, exactly as large as it will be printed. */
export function Page({ number, of, bare, children }: PageProps) {
  const size = usePaperSettings(({ pageSize }) => PAGE_SIZES[pageSize]);
  const { t } = useWords();
  const style: CSSProperties = {
    width: `${size.width}mm`,
    height: `${size.height}mm`,
    padding: bare ? 0 : `${MARGIN.top}mm ${MARGIN.side}mm ${MARGIN.bottom}mm`,
    gridTemplateRows: bare ? '1fr' : `${HEAD}mm 1fr ${FOOT}mm`,
  };
  return (
    <section
      className="page"
      style={style}
      aria-label={t('page.number', { page: number, pages: of })}
    >
      {!bare && <PageHead />}
      <div className="page-content">{children}</div>
      {!bare && <PageFoot number={number} of={of} />}
    </section>
  );
}

function PageHead() {
  const name = usePaperSettings((settings) => settings.shopName);
  const logo = usePaperSettings((settings) => settings.shopLogo);
  const title = usePlan((state) => state.plan.title);
  return (
    <header className="page-head">
      <span className="page-shop">
        {logo && <img src={logo} alt={name} />}
        {name && <span>{name}</span>}
      </span>
      <span className="page-title">
        <strong>{title}</strong> · {usePaperTitle()}
      </span>
    </header>
  );
}

function PageFoot({ number, of }: { number: number; of: number }) {
  const { t, n } = useWords();
  return (
    <footer className="page-foot">
      <span>{t('page.made-with', { date: n.date(new Date()) })}</span>
      <span className="page-number">{t('page.number', { page: number, pages: of })}</span>
    </footer>
  );
}
