/** The tune sheet: for whoever sets up the processor. */
export const tune = {
  'tune.title': 'Tune sheet: {option}',
  'tune.for.seat':
    'What to set on each channel so that all speakers arrive together at the {seat}.',
  'tune.for.seats': 'What to set on each channel: the best compromise over {seats}.',
  'tune.weighted': '{seat} (counts {weight})',
  'tune.steps.samples': 'Delays are in whole samples at {rate}.',
  'tune.steps.time': 'Delays are in steps of {step}.',
  'tune.steps.length':
    'Delays are in steps of {step} of path, at the speed of sound of air at {temperature}.',
  'tune.longest': 'The longest one wanted is {time} ({samples} samples, {length}).',
  'tune.longest.fits': 'The processor holds up to {limit}: all fit.',
  'tune.longest.unknown': 'Look up whether the processor holds that.',
  'tune.clamped':
    'The processor holds no more than {limit}: {speaker} would need {wanted} and still arrives {early} early.',
  'tune.set': 'Channels',
  'tune.col.speaker': 'Speaker',
  'tune.col.set': 'Delay to set',
  'tune.col.left': 'Left over',
  'tune.col.gain': 'Gain',
  'tune.col.polarity': 'Poles',
  'tune.col.highpass': 'High-pass',
  'tune.col.lowpass': 'Low-pass',
  'tune.col.entered': 'As entered',
  'tune.samples': '{count, plural, one {# sample} other {# samples}}',
  'tune.most': 'the most it holds',
  'tune.polarity': '{inverted, select, yes {swapped} other {normal}}',
  'tune.filter': '{family} {slope}, {frequency}',
  'tune.filter.none': 'none',
  'tune.filter.proposed': 'proposed',
  'tune.note.left':
    'Left over: what rounding to whole steps leaves, set less wanted. Gains bring the louder side of a pair down to the other; they hold for the direct sound alone.',
  'tune.note.poles':
    'Poles: as the plan says, else as is usual for the crossovers. Crossovers marked “proposed” come from the speakers’ bands; the maker of the speaker has the last word.',
  'tune.col.samples': 'samples at {rate}',
  'tune.units': 'The same delays in every unit',
  'tune.seats': 'What each seat is left with',
  'tune.col.seat': 'Seat',
  'tune.col.late': 'At most early or late',
  'tune.col.path': 'The same as a path',
  'tune.line.blocked':
    '{speaker}: the straight line to the {seat} is blocked by {things}. The delay counts the way round, {length} more.',
  'tune.line.unknown':
    '{speaker}: the straight line to the {seat} is blocked by {things}, and no way round is known: measure before trusting its delay.',
  'tune.order':
    'Start with the volume all the way down. Set crossovers first, so that no tweeter gets what it cannot bear, then poles, delays and gains. Then measure, and listen.',
};
