/** The ring sheet: for whoever turns, saws or prints the mounting rings. */
export const ring = {
  'ring.title': 'Mounting rings: {option}',
  'ring.intro':
    'A ring turns a panel’s normal into the aim of its speaker: its back lies on the panel, its front is square to the axis, and the bore runs along the axis. Sections are cut from the thin to the thick side.',
  'ring.none':
    'No speaker of this option stands on a ring. The sheet “Ring” beside the board puts them on one.',
  'ring.free':
    'No ring for: {speaker}. It stands at a free point, and a ring needs a panel under it.',
  'ring.of': 'Ring of: {speaker}',
  'ring.where': 'On: {panel}. It stands {mm} off, measured at the spot.',
  'ring.refused-standoff': 'There is no such ring yet: it wants {mm} more stand-off.',
  'ring.refused-measures':
    'There is no such ring: its measures cannot be together. See the sheet “Ring”.',
  'ring.steep':
    'Its wedge is over the limit of {deg}: aim nearer to the panel’s normal, take another spot, or build a pod.',
  'ring.thick':
    'Thick side to {hour} o’clock ({deg} clockwise from 12) as seen from the cabin, 12 being {way, select, up {up} front {to the front} rear {to the rear} left {to the left} right {to the right} other {down}}.',
  'ring.lift':
    'The panel is curved there: the flat back lifts up to {mm} off it. Scribe it to the panel, or fill under it.',
  'ring.true-size': 'Section at true size',
  'ring.scaled': 'Section, {percent} of true size',
  'ring.bar': '{mm} at this size',
  'ring.section': 'Section of the ring of: {speaker}',
  'ring.measure': 'Measure',
  'ring.value': 'Value',
  'ring.outer': 'Outside diameter',
  'ring.bore': 'Bore, along the axis',
  'ring.recess': 'Recess for the flange',
  'ring.recess-value': '{mm}, {depth} deep',
  'ring.rim': 'Radius of the outer front edge',
  'ring.rim-sharp': 'sharp',
  'ring.thickness': 'Thickness',
  'ring.thin-outer': 'Outer edge, thin side',
  'ring.thick-outer': 'Outer edge, thick side',
  'ring.thin-bore': 'At the bore, thin side',
  'ring.thick-bore': 'At the bore, thick side',
  'ring.middle': 'In the middle',
  'ring.wedge': 'Wedge: saw cut of the back',
  'ring.back': 'Its back on the panel',
  'ring.hole': 'Hole in the panel',
  'ring.hole-none':
    'None: the body stands wholly before the panel. Only wires and fixings go through.',
  'ring.hole-middle': 'Middle of that hole off the spot',
  'ring.back-middle': 'Middle of its back off the spot',
  'ring.screws': 'Screws',
  'ring.screws-value': '{count} on {mm}',
  'ring.under': 'Ring under the screws',
  'ring.range': '{least} to {most}',
  'ring.material': 'Material',
  'ring.boards':
    '{count, plural, one {Take one board of {board}} other {Glue # boards of {board} to a blank}}, turn it to {outer} and bore it square to its face; then {wedge, select, yes {saw its back at {deg} so that {thin} are left on one side and {thick} on the other} other {take its back off to {thick}}}. The saw’s own width is not in these numbers.',
  'ring.thin-side': 'thin side',
  'ring.thick-side': 'thick side',
  'ring.panel': 'panel',
  'ring.angle': 'wedge {deg}',
  'ring.zone': 'Speaker or ring reaches into: {zone}.',
  'ring.rim-advice':
    'A rim radius of {mm} is what UN R21 asks for where a head can reach a hard edge, by secondary sources: advice, no approval.',
};
