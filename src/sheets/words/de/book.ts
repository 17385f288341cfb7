export const book = {
  'book.subtitle': '{body} · {option}',
  'book.contents': 'Inhalt',
  'book.page': '{page}',

  'book.summary': 'Die Anlage',
  'book.summary.count':
    '{count, plural, =0 {Kein Lautsprecher} one {Ein Lautsprecher} other {# Lautsprecher}} in {pairs, plural, =0 {keinem Paar} one {einem Paar} other {# Paaren}}, jeder an einem eigenen Kanal; {seats, plural, one {ein Sitz wird} other {# Sitze werden}} berücksichtigt.',
  'book.summary.air':
    'Schall legt in Luft von {temperature} in einer Millisekunde {speed} mm zurück.',
  'book.summary.aligned.seat': 'Die Einstellung bringt den Schall hier zusammen: {seat}.',
  'book.summary.aligned.seats': 'Die Einstellung ist der beste Kompromiss für: {seats}.',
  'book.col.letter': 'Buchstabe',
  'book.col.what': 'Lautsprecher',
  'book.col.count': 'Anzahl',
  'book.col.band': 'Spielt von – bis',
  'book.col.cutout': 'Ausschnitt',
  'book.col.depth': 'Tiefe',
  'book.col.pocket': 'Geschlossenes Gehäuse',
  'book.pocket': '{count, plural, =0 {–} one {# Gehäuse} other {# Gehäuse}}',
  'book.range': '{from} – {to}',

  'book.positions': 'Wo die Lautsprecher sitzen und warum',
  'book.col.seen': 'Neben der Achse',
  'book.col.line': 'Linie',
  'book.col.standoff': 'Vor der Fläche',
  'book.why.pair.apart':
    '{who}: {side, select, left {links} other {rechts}} ist {length} näher am Kopf ({person}), zeitlich {time}; von dort gesehen zielen sie bis zu {angle} vorbei.',
  'book.why.pair.together':
    '{who}: beide kommen gleichzeitig am Kopf an ({person}); von dort gesehen zielen sie bis zu {angle} vorbei.',
  'book.why.alone': '{who}: {length} bis zum Kopf ({person}); die Achse zielt {angle} vorbei.',
  'book.why.line.free': 'Nichts steht im Weg.',
  'book.why.line.near': 'Der Schall geht dicht vorbei an: {things}.',
  'book.why.line.blocked': 'Der Schall geht außen herum um: {things}.',
  'book.why.reflection': 'Zuerst wirft ihn zurück: {panel}, {time} nach dem direkten Schall.',
  'book.why.reflection.none': 'Keine Fläche wirft ihn geradewegs zurück.',

  'book.chart': 'Wann der Schall ankommt',
  'book.chart.key':
    'Gefüllt: wie eingebaut, ohne Verzögerung. Offen: mit den Verzögerungen der Einstellung. Quadrate: links; Kreise: rechts. Zwei Striche vor einer Marke: etwas steht im Weg.',
  'book.chart.label': 'Ankunftszeiten aller Lautsprecher: {seat}',
  'book.chart.ms': 'ms nach dem Signal',

  'book.measured': 'Gemessen gegen vorhergesagt',
  'book.measured.none':
    'Im Auto wurde noch nichts gemessen. Alle Zeiten und Pegel in diesem Heft sind aus der Geometrie vorhergesagt.',

  'book.measured.place': 'gemessen: {place}, {seat}',
  'book.measured.head': 'Mitte des Kopfes',
  'book.measured.left-ear': 'linkes Ohr',
  'book.measured.right-ear': 'rechtes Ohr',
  'book.measured.agrees':
    'Alle {count} Kanäle kommen an wie vorhergesagt: keiner liegt weiter daneben, als zu erwarten war.',
  'book.measured.outliers':
    'Nicht wie vorhergesagt {count, plural, one {kommt} other {kommen}} an: {names}. Zuerst Verzögerung und Pole im Prozessor ansehen, dann, wo {count, plural, one {der Lautsprecher steht} other {die Lautsprecher stehen}}.',
  'book.measured.beyond': 'Als Ganzes passt die Messung nicht recht zur Vorhersage.',
  'book.measured.few':
    '{count, plural, one {Ein Kanal sagt} other {# Kanäle sagen}} nichts Sicheres: was die Messstrecke hinzufügt, ist nicht bekannt.',
  'book.measured.loop':
    'Was die Messstrecke hinzufügt, {offset}, ist für alle gleich und wurde abgezogen. Erwartet: die doppelte kombinierte Standardunsicherheit aus Einbauort, Mikrofon, Temperatur und Ablesung.',
  'book.col.predicted': 'Vorhergesagt',
  'book.col.measured': 'Gemessen',
  'book.col.difference': 'Unterschied',
  'book.col.expected': 'Erwartet',
  'book.col.verdict': 'Also',
  'book.verdict.within': 'wie vorhergesagt',
  'book.verdict.beyond': 'etwas daneben',
  'book.verdict.outlier': 'daneben: nachsehen',

  'book.tune': 'Einstellung für den Anfang',
  'book.tune.problem':
    'Es gibt keine Verzögerungen. Das Programm meldet dazu auf Englisch: „{problem}“.',

  'book.pictures': 'Bilder',
  'book.pictures.none': 'Es wurden keine Bilder hinzugefügt.',
  'book.picture': 'Bild {number}',
  'book.picture.captioned': 'Bild {number}: {caption}',
};
