export const tune = {
  'tune.title': 'Einstellblatt: {option}',
  'tune.for.seat':
    'Was an jedem Kanal einzustellen ist, damit alle Lautsprecher hier gleichzeitig ankommen: {seat}.',
  'tune.for.seats': 'Was an jedem Kanal einzustellen ist: der beste Kompromiss für {seats}.',
  'tune.weighted': '{seat} (zählt {weight})',
  'tune.steps.samples': 'Verzögerungen in ganzen Abtastwerten bei {rate}.',
  'tune.steps.time': 'Verzögerungen in Schritten von {step}.',
  'tune.steps.length':
    'Verzögerungen in Schritten von {step} Weg, bei der Schallgeschwindigkeit von Luft mit {temperature}.',
  'tune.longest': 'Die längste gewünschte ist {time} ({samples} Abtastwerte, {length}).',
  'tune.longest.fits': 'Der Prozessor fasst bis zu {limit}: alle passen.',
  'tune.longest.unknown': 'Nachsehen, ob der Prozessor so viel fasst.',
  'tune.clamped':
    'Der Prozessor fasst höchstens {limit}: {speaker} bräuchte {wanted} und kommt noch {early} zu früh an.',
  'tune.set': 'Kanäle',
  'tune.col.speaker': 'Lautsprecher',
  'tune.col.set': 'Verzögerung',
  'tune.col.left': 'Rest',
  'tune.col.gain': 'Pegel',
  'tune.col.polarity': 'Pole',
  'tune.col.highpass': 'Hochpass',
  'tune.col.lowpass': 'Tiefpass',
  'tune.col.entered': 'Eingetragen',
  'tune.samples': '{count, plural, one {# Abtastwert} other {# Abtastwerte}}',
  'tune.most': 'mehr fasst er nicht',
  'tune.polarity': '{inverted, select, yes {vertauscht} other {normal}}',
  'tune.filter': '{family} {slope}, {frequency}',
  'tune.filter.none': 'keiner',
  'tune.filter.proposed': 'Vorschlag',
  'tune.note.left':
    'Rest: was das Runden auf ganze Schritte lässt, eingestellt minus gewünscht. Pegel bringen die lautere Seite eines Paars auf die andere herunter; sie gelten nur für den direkten Schall.',
  'tune.note.poles':
    'Pole: wie der Plan sagt, sonst wie bei den Frequenzweichen üblich. Mit „Vorschlag“ bezeichnete Weichen folgen aus den Bereichen der Lautsprecher; das letzte Wort hat deren Hersteller.',
  'tune.col.samples': 'Abtastwerte, {rate}',
  'tune.units': 'Dieselben Verzögerungen in jeder Einheit',
  'tune.seats': 'Was jedem Sitz bleibt',
  'tune.col.seat': 'Sitz',
  'tune.col.late': 'Höchstens zu früh oder spät',
  'tune.col.path': 'Dasselbe als Weg',
  'tune.line.blocked':
    '{speaker}: im Weg auf der geraden Linie ({seat}): {things}. Die Verzögerung rechnet mit dem Weg außen herum, {length} mehr.',
  'tune.line.unknown':
    '{speaker}: im Weg auf der geraden Linie ({seat}): {things}, und ein Weg außen herum ist nicht bekannt: vor dem Verlass auf die Verzögerung messen.',
  'tune.order':
    'Mit ganz heruntergedrehter Lautstärke beginnen. Zuerst die Frequenzweichen einstellen, damit kein Hochtöner bekommt, was er nicht verträgt, dann Pole, Verzögerungen und Pegel. Danach messen und hören.',
};
