/** The arrival of sound in pictures. */
export const strip = {
  'strip.title': 'How the sound reaches you',
  'strip.lead':
    'Up to {time}, twice. You cannot see it happen: a blink of an eye takes many times as long.',
  'strip.none': 'As built, every speaker starts at the same moment.',
  'strip.aligned':
    'Set up for your seat, the nearer speakers wait and everything arrives together.',
  'strip.aligned.other': 'Set up for another place, the {seat}.',
  'strip.aligned.several': 'Set up as a compromise between several seats.',
  'strip.starts': '{who} {count, plural, one {starts} other {start}}',
  'strip.starts.all': 'All {count} speakers start',
  'strip.arrives': '{who} {count, plural, one {arrives} other {arrive}}',
  'strip.arrives.all': 'All {count} arrive together',
  'strip.way': 'On the way',
  'strip.more': '{first} and {count} more',
  'strip.there': '{count, plural, =0 {none there yet} other {# of {all} there}}',
  'strip.key':
    'Seen from above, cut through at the height of your ears. A line is where the sound of one speaker cuts that height: solid from the left, dashed from the right, heavier for deeper sounds; a wash is the rest of its sphere, lower or higher. A dot is sound that goes round something in its way. Worked out, not measured; direct sound alone, without what the windows throw back.',
  'strip.picture': 'The arrival of the sound in pictures. {what}',
};
