import { useSession } from '../../store';
import { type Board, useBoard } from '../parts/use-board';
import { CarDetails } from './car-details';
import { ObstacleDetails } from './obstacle-details';
import { PanelDetails } from './panel-details';
import { SeatDetails } from './seat-details';
import { SpeakerDetails } from './speaker-details';

/** The right column: everything about the one selected thing, or about the whole car. */
export function DetailsColumn() {
  const { board } = useBoard();
  return (
    <section className="column details" id="details" aria-label="Details" tabIndex={-1}>
      {board ? <Selected board={board} /> : <CarDetails board={null} />}
    </section>
  );
}

/** Keyed by what is selected, so that nothing half typed goes over to the next thing. */
function Selected({ board }: { board: Board }) {
  const selection = useSession((session) => session.selection);
  const { cabin, option } = board;
  const id = selection?.id;
  const key = selection ? `${selection.kind}:${selection.id}` : 'car';
  const speaker = option?.speakers.find((s) => s.id === id);
  const seat = cabin.seats.find((s) => s.id === id);
  const obstacle = cabin.obstacles.find((o) => o.id === id);
  const panel = cabin.panels.find((p) => p.id === id);
  if (selection?.kind === 'speaker' && speaker)
    return <SpeakerDetails key={key} board={board} speaker={speaker} />;
  if (selection?.kind === 'seat' && seat)
    return <SeatDetails key={key} board={board} seat={seat} />;
  if (selection?.kind === 'obstacle' && obstacle)
    return <ObstacleDetails key={key} board={board} obstacle={obstacle} />;
  if (selection?.kind === 'panel' && panel) return <PanelDetails key={key} panel={panel} />;
  return <CarDetails board={board} />;
}
