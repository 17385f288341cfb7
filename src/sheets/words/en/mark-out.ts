/** The mark-out sheet: for the installer with tape, inclinometer and laser in the real car. */
export const markOut = {
  'mark.title': 'Marking out: {option}',
  'mark.intro':
    'Doors shut, nobody in the car, front seats where the plan has them. A tape goes from each numbered point straight to the spot; where the first three meet is the mark. The numbers are the model’s: where a point of this car lies elsewhere, measure it first and enter it in the plan.',
  'mark.none': 'There is no speaker in this option yet.',
  'mark.speaker': '{speaker}: {panel}',
  'mark.speaker-free': '{speaker}, at a free point',
  'mark.near': 'Where the points lie: {speaker}',
  'mark.way-up':
    '{way, select, up {↑ up} front {↑ to the front} rear {↑ to the rear} left {↑ to the left} right {↑ to the right} other {↑ down}}',
  'mark.way-right':
    '{way, select, front {to the front →} rear {to the rear →} left {to the left →} right {to the right →} up {up →} other {down →}}',
  'mark.tapes': 'By tape, to the spot',
  'mark.distance': 'Tape',
  'mark.check': 'to check by',
  'mark.error':
    'With tapes {sd} wrong now and then, 95 marks in 100 lie within {error} of the spot.',
  'mark.no-fix':
    'No three points within reach of a tape fix this spot{by, select, both {: mark it by the heights and the template} heights {: mark it by the heights} other {}}. In the plan’s axes it lies at x {x} (to the rear), y {y} (to the right) and z {z} (up).',
  'mark.heights': 'Height',
  'mark.above-sill': '{mm} above the top of the sill',
  'mark.above-rail': '{mm} above the bolts of the seat rail',
  'mark.below-sill': '{mm} below the top of the sill',
  'mark.below-rail': '{mm} below the bolts of the seat rail',
  'mark.aim': 'Aim',
  'mark.face':
    'A straight edge {held, select, lengthwise {lengthwise} crosswise {crosswise} other {upright}} on the flange: {deg} from level{end, select, level {} front {, its front end higher} rear {, its rear end higher} left {, its left end higher} right {, its right end higher} lean_front {, its top leaning to the front} lean_rear {, its top leaning to the rear} lean_left {, its top leaning to the left} lean_right {, its top leaning to the right} other {}}.',
  'mark.laser':
    'A laser along the axis, the seats empty, hits: {thing}, {distance} away; from there {near}.',
  'mark.laser-far': 'A laser along the axis hits nothing within {distance}.',
  'mark.laser-point': '{distance} to “{point}”',
  'mark.no-aim': 'Its aim has no direction.',
  'mark.cut': 'Cut-out',
  'mark.cut-round': 'Round, {mm}.',
  'mark.cut-oval': 'Oval, {long} by {short}: the opening of {mm} along the tilted axis.',
  'mark.cut-off':
    'Its middle lies {mm} off the spot, towards {hour} o’clock ({deg} clockwise from 12) seen from the cabin, 12 being {way, select, up {up} front {to the front} rear {to the rear} left {to the left} right {to the right} other {down}}.',
  'mark.cut-none':
    'None: the body stands wholly before the panel. Only wires and fixings go through.',
  'mark.body': 'Flange {flange}, depth {depth}, of which {behind} behind the panel.',
  'mark.body-before': 'Flange {flange}, depth {depth}.',
  'mark.no-body': 'No body is entered: take the cut-out from the speaker’s own drawing.',
  'mark.no-template':
    'There is no template for it: that takes a panel, the speaker’s body and an aim out of the panel.',
  'mark.standoff': 'It stands {mm} off the panel.',
  'mark.ring': 'On a ring: {outer} outside, {thin} to {thick} thick, wedge {deg}.',
  'mark.ring-even': 'On a ring: {outer} outside, {thick} thick.',
  'mark.ring-steep': 'The wedge is over {deg}: think again about aim or spot, or build a pod.',
  'mark.ring-none': 'There is no such ring as planned: see the sheet of rings.',
  'mark.zones': 'Keep clear',
  'mark.zone': 'Reaches into: {zone}.',
  'mark.zones-many':
    'Reaches into {count, plural, one {a place} other {# places}} kept clear, named beside this speaker on the mark-out sheet: read it there before going on.',
  'mark.misfits': 'Does not fit as planned',
  'misfit.outline':
    '{ring, select, yes {the ring} other {the flange}} reaches {by} over the edge of: {thing}',
  'misfit.curvature': 'the panel is too curved for the flange, by {by}: {thing}',
  'misfit.cutout': 'the cut-out reaches {by} over the edge of: {thing}',
  'misfit.depth': '{by} too deep for: {thing}',
  'misfit.airspace': '{by} too little airspace: {thing}',
  'misfit.no-air': 'its sealed box holds no air as drawn: {thing}',
  'misfit.into': '{ring, select, yes {the ring} other {it}} reaches {by} into: {thing}',
  'misfit.inside': '{ring, select, yes {the ring} other {it}} stands inside: {thing}',
  'misfit.no-panel': 'nothing can be mounted on: {thing}',
  'misfit.ring': 'the ring wants {by} more stand-off',
  'misfit.bore': 'the bore of the ring is {by} too narrow for the speaker',
  'misfit.flange': 'the ring does not hold the flange: see the sheet “Ring”',
  'misfit.free-ring': 'a free point has no panel for its ring to stand on',
  'misfit.no-ring': 'the measures of the ring cannot be together',
  'mark.look-up': 'Look up before cutting here: {titles}.',
  'mark.cautions': 'Before anything is cut',
  'template.title': '{speaker}: template',
  'template.tile': 'Page {name} of {count}',
  'template.print': 'Print at 100 %, “actual size”. Measure both rulers before use:',
  'template.measured': 'measured on paper:',
  'template.across': 'across',
  'template.up': 'up',
  'template.refuse': 'More than {most} off 100 mm: do not use this page.',
  'template.lay':
    'Lay the cross on the spot, printed side to you, and turn it until the numbered ticks point at their reference points; the arrow then points {way, select, up {straight up the panel} front {to the front} rear {to the rear} left {to the left} right {to the right} other {down}}.',
  'template.lay-face':
    'For the face of the pod, square to the axis: its cross is the middle of the speaker’s front, and the arrow points {way, select, up {up} front {to the front} rear {to the rear} left {to the left} right {to the right} other {down}} when the pod stands. On the panel itself only wires and fixings go through.',
  'template.screws': 'screw circle {mm}',
  'template.flat': 'The template is flat, and the panel is flat there too.',
  'template.curved':
    'The template is flat, and lies in the plane that touches the panel at the spot; the panel leaves it by up to {mm} at the edge of what is drawn. Press it on from the spot outward, without folds.',
  'template.on-ring':
    'All is drawn where it falls on the panel, along the tilted axis: round on the speaker, oval here.',
  'template.curve-own':
    'The speaker’s own drawing decides on the screws; their circle is drawn as is usual.',
  'template.spot': 'spot',
  'template.aim': 'aim leans {deg}',
  'template.way':
    '{way, select, up {up} front {front} rear {rear} left {left} right {right} other {down}}',
  'template.cutout': 'cut-out {mm}',
  'template.flange': 'flange {mm}',
  'template.ring': 'ring {mm}',
  'template.glue': 'lay on {name}, cross on cross',
  'printer.title': 'Is the printer true?',
  'printer.ask':
    'Print the templates, measure both rulers on the paper and enter what they measure.',
  'printer.across': 'Ruler across, mm',
  'printer.up': 'Ruler up the page, mm',
  'printer.unread': 'Enter both as lengths, such as 99.8 or 3.93 in.',
  'printer.good':
    'True enough: {across} across, {up} up the page. A length of {mm} comes out {off} wrong at most.',
  'printer.bad':
    'These templates are not to be used: the printer made them {across} across and {up} up the page, and no more than {most} is allowed. Print again at 100 % (“actual size”, no fitting to the page), and measure again.',
  'printer.stamp': 'The print is not true: do not use it',
};
