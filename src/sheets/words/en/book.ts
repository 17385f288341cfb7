/** The build book: for the owner, and for those who judge the work. */
export const book = {
  'book.subtitle': '{body} · {option}',
  'book.contents': 'Contents',
  'book.page': '{page}',

  'book.summary': 'The system',
  'book.summary.count':
    '{count, plural, =0 {No speaker} one {One speaker} other {# speakers}} in {pairs, plural, =0 {no pair} one {one pair} other {# pairs}}, each on a channel of its own; {seats, plural, one {one seat is} other {# seats are}} counted with.',
  'book.summary.air': 'Sound travels {speed} mm in a millisecond in air of {temperature}.',
  'book.summary.aligned.seat': 'The tune brings the sound together at the {seat}.',
  'book.summary.aligned.seats': 'The tune is the best compromise over {seats}.',
  'book.col.letter': 'Letter',
  'book.col.what': 'Speakers',
  'book.col.count': 'Number',
  'book.col.band': 'Plays from – to',
  'book.col.cutout': 'Cut-out',
  'book.col.depth': 'Depth',
  'book.col.pocket': 'Sealed box',
  'book.pocket': '{count, plural, =0 {–} one {# box} other {# boxes}}',
  'book.range': '{from} – {to}',

  'book.positions': 'Where the speakers sit, and why',
  'book.col.seen': 'Off the axis',
  'book.col.line': 'Line',
  'book.col.standoff': 'Before the panel',
  'book.why.pair.apart':
    '{who}: the {side, select, left {left} other {right}} one is {length} nearer to the {person}’s head, {time} in time; seen from there they point up to {angle} past it.',
  'book.why.pair.together':
    '{who}: both arrive together at the {person}’s head; seen from there they point up to {angle} past it.',
  'book.why.alone': '{who}: {length} from the {person}’s head; it points {angle} past it.',
  'book.why.line.free': 'Nothing stands in the way.',
  'book.why.line.near': 'The sound passes close to {things}.',
  'book.why.line.blocked': 'The sound goes round {things}.',
  'book.why.reflection':
    'The first thing to throw it back is the {panel}, {time} after the direct sound.',
  'book.why.reflection.none': 'No panel throws it straight back.',

  'book.chart': 'When the sound arrives',
  'book.chart.key':
    'Filled: as built, without delay. Open: with the delays of the tune. Squares: left; circles: right. Two bars before a mark: something stands in the way.',
  'book.chart.label': 'Arrival times of all speakers at the {seat}',
  'book.chart.ms': 'ms after the signal',

  'book.measured': 'Measured against predicted',
  'book.measured.none':
    'Nothing has been measured in the car yet. All times and levels in this book are predicted from geometry.',

  'book.measured.place': 'measured at the {place}, {seat}',
  'book.measured.head': 'middle of the head',
  'book.measured.left-ear': 'left ear',
  'book.measured.right-ear': 'right ear',
  'book.measured.agrees':
    'All {count} channels arrive as predicted: none is farther off than was to be expected.',
  'book.measured.outliers':
    '{names} {count, plural, one {does} other {do}} not arrive as predicted: look at delay and poles in the processor first, then at where {count, plural, one {the speaker stands} other {the speakers stand}}.',
  'book.measured.beyond': 'As a whole the measurement does not quite fit the prediction.',
  'book.measured.few':
    '{count, plural, one {One channel tells} other {# channels tell}} nothing for sure: what the measuring loop adds is not known.',
  'book.measured.loop':
    'What the measuring loop adds, {offset}, is the same for all and is taken off. Expected: twice the combined standard uncertainty of spot, microphone, temperature and reading.',
  'book.col.predicted': 'Predicted',
  'book.col.measured': 'Measured',
  'book.col.difference': 'Difference',
  'book.col.expected': 'Expected',
  'book.col.verdict': 'So it is',
  'book.verdict.within': 'as predicted',
  'book.verdict.beyond': 'somewhat off',
  'book.verdict.outlier': 'off: look',

  'book.tune': 'The tune to start from',
  'book.tune.problem': 'There are no delays: {problem}',

  'book.pictures': 'Pictures',
  'book.pictures.none': 'No pictures were added.',
  'book.picture': 'Picture {number}',
  'book.picture.captioned': 'Picture {number}: {caption}',
};
