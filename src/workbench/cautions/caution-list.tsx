import type { Caution } from '../../exchange/cautions';

/** Cautions with their titles. */
export const CautionList = ({ list }: { list: readonly Caution[] }) => (
  <dl className="caution-list">
    {list.map((caution) => (
      <div key={caution.id}>
        <dt>{caution.title}</dt>
        <dd>{caution.text}</dd>
      </div>
    ))}
  </dl>
);
