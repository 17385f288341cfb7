import { DIMENSIONS } from '../../geometry';
import type { PaperFacts } from '../facts';
import { type Block, heading, paragraphs } from '../page';
import type { WordKey } from '../words/catalogue';
import type { PrintedWords } from '../words/use-words';

/** What was measured or set in this car, and what is only usual for its body style. */
export function knownBlocks(
  { plan, cabin, option, seat }: PaperFacts,
  words: PrintedWords,
): Block[] {
  const { t, n, names } = words;
  const { template, dimensions = {}, measured = {}, panels = [] } = plan.cabin;
  const known = DIMENSIONS.filter(({ id }) => typeof dimensions[id] === 'number');
  const items = known.map(({ id, unit }) => {
    const value = dimensions[id] as number;
    return t('customer.known.item', {
      what: t(`dimension.${id}` as WordKey),
      value: unit === 'deg' ? n.angle(value, 1) : n.length(value),
    });
  });
  for (const [id, { depthBehind, airspaceBehind }] of Object.entries(measured)) {
    const panel = names.panel(cabin.panels.find((one) => one.id === id) ?? id);
    if (depthBehind !== undefined)
      items.push(t('customer.known.depth', { panel, value: n.length(depthBehind) }));
    if (airspaceBehind !== undefined)
      items.push(t('customer.known.airspace', { panel, value: n.number(airspaceBehind, 1) }));
  }
  if (panels.length > 0) items.push(t('customer.known.panels', { count: panels.length }));
  const { readings = [], measured: arrivals = [] } = option;
  const tapes = readings.filter(({ by }) => by === 'tape').length;
  const sounds = readings.length - tapes;
  if (tapes > 0) items.push(t('customer.known.tapes', { count: tapes }));
  if (sounds > 0) items.push(t('customer.known.sounds', { count: sounds }));
  if (arrivals.length > 0) items.push(t('customer.known.arrivals', { count: arrivals.length }));
  const assumed = Object.keys(cabin.dimensions).length - known.length;
  // Of who sits there: a seat may have an occupant of its own size.
  const sits = cabin.seats.find(({ id }) => id === seat?.id);
  const height = sits?.posture?.stature ?? cabin.dimensions.occupantHeight;
  const temperature = n.temperature(plan.air.temperatureC);
  return [
    heading('known', t('customer.known')),
    ...paragraphs(
      'known-measured',
      items.length > 0
        ? t('customer.known.measured', { what: n.list(items) })
        : t('customer.known.nothing'),
      'paper-note',
    ),
    ...paragraphs(
      'known-assumed',
      [
        template === 'none'
          ? t('customer.known.none-derived')
          : t('customer.known.assumed', { count: assumed, body: names.body(template) }),
        typeof height === 'number'
          ? t('customer.known.person', { height: n.length(height), temperature })
          : t('customer.known.person-less', { temperature }),
        t('customer.known.depths'),
      ].join(' '),
      'paper-note',
    ).map((block) => ({ ...block, tight: true })),
  ];
}
