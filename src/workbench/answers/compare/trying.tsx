import { Working } from '../steps/working';

/** How sure the differences are is tried while the table stands already. */
export const Trying = ({ of }: Pick<Parameters<typeof Working>[0], 'of'>) => (
  <Working of={of} words="Trying how sure the differences are…" />
);
