/** The customer sheet. Written for someone who has never heard of a path length. */
export const customer = {
  'customer.title': 'Where the sound comes from in your car',
  'customer.subtitle': '{body} · {option} · heard by the {person}',
  'customer.behind':
    'Seen from behind and above, with the roof and the near side left away. Lines show the way of the sound to the {person}’s head: solid from the left, dashed from the right.',
  'customer.behind.nobody':
    'Seen from behind and above, with the roof and the near side left away.',
  'customer.above': 'From above',
  'customer.side': 'From the left',
  'customer.car':
    'The car {view, select, above {from above} side {from the left} other {from behind and above}} with its speakers',

  'customer.speakers': 'The speakers',
  'customer.speakers.none': 'No speaker stands in this option yet.',
  'customer.col.letter': 'On the drawing',
  'customer.col.speaker': 'Speaker',
  'customer.col.where': 'Where it sits',
  'customer.col.distance': 'Way to the ears',
  'customer.col.time': 'Heard after',
  'customer.free-point': 'free-standing',

  'customer.says': 'What that means for you',
  'customer.says.time': 'Timing',
  'customer.says.way': 'A free way',
  'customer.says.choice': 'The choice',
  'customer.time.none':
    'No left and right speaker of one kind stand in this option, so there is nothing to compare.',
  'customer.time.together':
    'The left and the right {who} are equally far from your head: their sound arrives together, and voices stay in the middle.',
  'customer.time.apart':
    'The {near} is {length} nearer to your head than its partner on the other side, so its sound arrives {time} earlier. {meaning} {delayed}',
  'customer.time.blink': 'A blink of an eye takes about {times} times as long,',
  'customer.time.tiny': 'and the ear hardly notices it either.',
  'customer.time.small': 'yet the ear lets voices drift a little towards that side.',
  'customer.time.middle':
    'yet the ear moves voices clearly away from the middle towards that side.',
  'customer.time.large':
    'yet for the ear it is enough to make all the music seem to come from that side.',
  'customer.time.delayed':
    'Set up for your seat, the nearer speakers wait for the farther ones, up to {delay}, and everything arrives together.',

  'customer.way.free':
    '{count, plural, one {Nothing stands between your head and the speaker} other {Nothing stands between your head and any of the # speakers}}.',
  'customer.way.some':
    '{free, plural, =0 {No speaker has} one {One of the {count} speakers has} other {# of the {count} speakers have}} a free line to your head. On the way from {names} to you {many, select, yes {stand} other {stands}} {things}; the sound goes round. {meaning}',
  'customer.way.loss.none': 'That is hardly to be heard.',
  'customer.way.loss.little': 'That makes it a little softer.',
  'customer.way.loss.clear': 'That makes it clearly softer.',
  'customer.way.loss.unknown': 'How much that takes from it is not known.',
  'customer.way.others': '{first}, among others',
  'customer.way.the': 'the {name}',
  'customer.way.something': 'something',

  'customer.choice.fits':
    '{count, plural, one {The speaker fits where it is} other {All # speakers fit where they are}} drawn, as far as sizes usual in such a car tell.',
  'customer.choice.unsized':
    '{count, plural, one {One speaker has} other {# speakers have}} no sizes entered: whether {count, plural, one {it fits} other {they fit}} is not known.',
  'customer.choice.unknown':
    '{count, plural, one {Whether the speaker fits} other {Whether the # speakers fit}} where drawn is not known.',
  'customer.choice.misfits':
    '{count, plural, one {One speaker does} other {# speakers do}} not fit yet where drawn and will still move.',
  'customer.choice.zones':
    '{count, plural, one {One speaker reaches} other {# speakers reach}} into a place kept clear for safety: see the last section.',
  'customer.choice.better': 'Compared with “{other}”, {what}.',
  'customer.choice.worse': 'In return, {what}.',
  'customer.choice.nothing': 'In what is measured here it does not differ from “{other}”.',
  'customer.choice.only-worse':
    'Compared with “{other}” nothing measured here speaks for it: {what}.',
  'customer.why.difference': 'the left and right {who} arrive {here} apart instead of {there}',
  'customer.why.offAxisDeg': 'the {who} point past you by up to {here} instead of {there}',
  'customer.why.line': 'the way from the {who} is {here} instead of {there}',
  'customer.why.obstructionDb': 'the {who} lose {here} to what is in the way instead of {there}',
  'customer.why.misfits':
    '{here, plural, =0 {every speaker fits} one {# speaker does not fit} other {# speakers do not fit}} (there: {there, plural, =0 {every one fits} one {# does not} other {# do not}})',
  'customer.why.keepClear':
    '{here, plural, =0 {no speaker stands in a place kept clear} one {# speaker stands in a place kept clear} other {# speakers stand in places kept clear}} (there: {there})',
  'line.clear': 'free',
  'line.grazing': 'close past something',
  'line.blocked': 'blocked',

  'customer.compare':
    'The chosen option against {count, plural, one {the other} other {the others}}',
  'customer.compare.measure': 'At the {seat}',
  'customer.compare.chosen': '{option} (chosen)',
  'customer.compare.best': 'best',
  'customer.compare.unsized': '{value}; {count} not known',
  'customer.compare.key':
    '◆ and bold: the best in its row, by the numbers as they stand. A centimetre more or less is within what a tape can tell.',
  'customer.compare.more':
    '{count, plural, one {One more option is} other {# more options are}} not shown.',
  'customer.compare.alike': 'In what this table tells the options do not differ.',
  'customer.row.difference': 'Left and right {who} apart in time',
  'customer.row.offAxisDeg': 'How far the {who} point past you',
  'customer.row.line': 'The way from the {who}',
  'customer.row.misfits': 'Speakers that do not fit',
  'customer.row.keepClear': 'Speakers in places kept clear',

  'customer.known': 'What was measured, and what was assumed',
  'customer.known.measured': 'Measured or set for this car: {what}.',
  'customer.known.nothing': 'Nothing of the cabin was measured in this car yet.',
  'customer.known.item': '{what} {value}',
  'customer.known.depth': 'depth behind the {panel} {value}',
  'customer.known.airspace': 'airspace behind the {panel} {value} l',
  'customer.known.tapes': '{count, plural, one {# distance taped} other {# distances taped}}',
  'customer.known.sounds':
    '{count, plural, one {# distance measured by sound} other {# distances measured by sound}}',
  'customer.known.arrivals': 'the arrival of {count, plural, one {# channel} other {# channels}}',
  'customer.known.panels': '{count, plural, one {# panel} other {# panels}} entered by hand',
  'customer.known.assumed':
    'Assumed: {count, plural, one {# dimension} other {# dimensions}} of the cabin as typical for the body style “{body}”, from memory.',
  'customer.known.none-derived': 'No body style was assumed: every panel was entered by hand.',
  'customer.known.person': 'A listener of {height} and air of {temperature} are counted with.',
  'customer.known.person-less': 'Air of {temperature} is counted with.',
  'customer.known.depths':
    'Depths behind panels that are not named above are usual ones and must be looked at with the panel off.',
  'customer.cautions': 'Before anything is cut',
  'customer.zone': '{letter}, {speaker}: {zones}.',
};
