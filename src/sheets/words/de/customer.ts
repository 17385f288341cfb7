export const customer = {
  'customer.title': 'Woher der Klang in Ihrem Auto kommt',
  'customer.subtitle': '{body} · {option} · gehört vom {person}',
  'customer.behind':
    'Von hinten oben gesehen, ohne Dach und ohne die nahe Seite. Die Linien zeigen den Weg des Schalls zum Kopf ({person}): durchgezogen von links, gestrichelt von rechts.',
  'customer.behind.nobody': 'Von hinten oben gesehen, ohne Dach und ohne die nahe Seite.',
  'customer.above': 'Von oben',
  'customer.side': 'Von links',
  'customer.car':
    'Das Auto {view, select, above {von oben} side {von links} other {von hinten oben}} mit seinen Lautsprechern',

  'customer.speakers': 'Die Lautsprecher',
  'customer.speakers.none': 'In dieser Variante steht noch kein Lautsprecher.',
  'customer.col.letter': 'In der Zeichnung',
  'customer.col.speaker': 'Lautsprecher',
  'customer.col.where': 'Einbauort',
  'customer.col.distance': 'Weg bis zum Ohr',
  'customer.col.time': 'Zu hören nach',
  'customer.free-point': 'frei stehend',

  'customer.says': 'Was das für Sie bedeutet',
  'customer.says.time': 'Zeit',
  'customer.says.way': 'Freier Weg',
  'customer.says.choice': 'Die Wahl',
  'customer.time.none':
    'In dieser Variante gibt es keinen linken und rechten Lautsprecher derselben Art, also nichts zu vergleichen.',
  'customer.time.together':
    'Linker und rechter Lautsprecher ({who}) sind gleich weit von Ihrem Kopf entfernt: ihr Schall kommt gleichzeitig an, und Stimmen bleiben in der Mitte.',
  'customer.time.apart':
    'Der Lautsprecher „{near}“ ist Ihrem Kopf {length} näher als sein Gegenstück auf der anderen Seite, sein Schall kommt also {time} früher an. {meaning} {delayed}',
  'customer.time.blink': 'Ein Wimpernschlag dauert etwa {times}-mal so lang,',
  'customer.time.tiny': 'und auch das Ohr bemerkt es kaum.',
  'customer.time.small': 'doch für das Ohr rücken Stimmen ein wenig zu dieser Seite.',
  'customer.time.middle': 'doch für das Ohr rücken Stimmen deutlich aus der Mitte zu dieser Seite.',
  'customer.time.large': 'doch dem Ohr genügt das, um die ganze Musik auf dieser Seite zu hören.',
  'customer.time.delayed':
    'Auf Ihren Platz eingestellt, warten die näheren Lautsprecher auf die ferneren, bis zu {delay}, und alles kommt gleichzeitig an.',

  'customer.way.free':
    '{count, plural, one {Zwischen Ihrem Kopf und dem Lautsprecher steht nichts} other {Zwischen Ihrem Kopf und den # Lautsprechern steht nichts}}.',
  'customer.way.some':
    '{free, plural, =0 {Kein Lautsprecher hat} one {Einer der {count} Lautsprecher hat} other {# der {count} Lautsprecher haben}} eine freie Linie zu Ihrem Kopf. Im Weg ({names}) {many, select, yes {stehen} other {steht}}: {things}; der Schall geht außen herum. {meaning}',
  'customer.way.loss.none': 'Das ist kaum zu hören.',
  'customer.way.loss.little': 'Er wird dadurch ein wenig leiser.',
  'customer.way.loss.clear': 'Er wird dadurch deutlich leiser.',
  'customer.way.loss.unknown': 'Wie viel das kostet, ist nicht bekannt.',
  'customer.way.others': '{first} und anderes',
  'customer.way.the': '{name}',
  'customer.way.something': 'etwas',

  'customer.choice.fits':
    '{count, plural, one {Der Lautsprecher passt dorthin, wo er gezeichnet ist} other {Alle # Lautsprecher passen dorthin, wo sie gezeichnet sind}}, soweit übliche Maße eines solchen Autos das sagen.',
  'customer.choice.unsized':
    'Für {count, plural, one {einen Lautsprecher} other {# Lautsprecher}} sind keine Einbaumaße eingegeben: Ob {count, plural, one {er passt} other {sie passen}}, ist nicht bekannt.',
  'customer.choice.unknown':
    '{count, plural, one {Ob der Lautsprecher dorthin passt, wo er gezeichnet ist} other {Ob die # Lautsprecher dorthin passen, wo sie gezeichnet sind}}, ist nicht bekannt.',
  'customer.choice.misfits':
    '{count, plural, one {Ein Lautsprecher passt} other {# Lautsprecher passen}} noch nicht dorthin, wo gezeichnet, und {count, plural, one {wird} other {werden}} noch verschoben.',
  'customer.choice.zones':
    '{count, plural, one {Ein Lautsprecher ragt} other {# Lautsprecher ragen}} in einen Bereich, der aus Sicherheitsgründen frei bleiben soll: siehe letzter Abschnitt.',
  'customer.choice.better': 'Verglichen mit „{other}“ gilt: {what}.',
  'customer.choice.worse': 'Dafür gilt: {what}.',
  'customer.choice.nothing':
    'In dem, was hier gemessen wird, unterscheidet sie sich nicht von „{other}“.',
  'customer.choice.only-worse':
    'Verglichen mit „{other}“ spricht nichts hier Gemessene für sie: {what}.',
  'customer.why.difference': 'zwischen links und rechts ({who}) liegen {here} statt {there}',
  'customer.why.offAxisDeg':
    'an Ihnen vorbei zielt der Schall ({who}) um bis zu {here} statt {there}',
  'customer.why.line': 'der Weg des Schalls ({who}) ist {here} statt {there}',
  'customer.why.obstructionDb': 'was im Weg steht, kostet {here} statt {there} ({who})',
  'customer.why.misfits':
    '{here, plural, =0 {jeder Lautsprecher passt} one {# Lautsprecher passt nicht} other {# Lautsprecher passen nicht}} (dort: {there, plural, =0 {alle passen} one {# passt nicht} other {# passen nicht}})',
  'customer.why.keepClear':
    '{here, plural, =0 {kein Lautsprecher steht in einem freizuhaltenden Bereich} one {# Lautsprecher steht in einem freizuhaltenden Bereich} other {# Lautsprecher stehen in freizuhaltenden Bereichen}} (dort: {there})',
  'line.clear': 'frei',
  'line.grazing': 'dicht an etwas vorbei',
  'line.blocked': 'verdeckt',

  'customer.compare':
    'Die gewählte Variante gegen {count, plural, one {die andere} other {die anderen}}',
  'customer.compare.measure': 'Gehört von: {seat}',
  'customer.compare.chosen': '{option} (gewählt)',
  'customer.compare.best': 'am besten',
  'customer.compare.unsized': '{value}; {count} nicht bekannt',
  'customer.compare.key':
    '◆ und fett: das Beste der Zeile, nach den Zahlen, wie sie dastehen. Ein Zentimeter mehr oder weniger liegt in dem, was ein Maßband hergibt.',
  'customer.compare.more':
    '{count, plural, one {Eine weitere Variante ist} other {# weitere Varianten sind}} nicht gezeigt.',
  'customer.compare.alike':
    'In dem, was diese Tabelle sagt, unterscheiden sich die Varianten nicht.',
  'customer.row.difference': 'Links und rechts ({who}) zeitlich auseinander',
  'customer.row.offAxisDeg': 'Wie weit sie an Ihnen vorbei zielen ({who})',
  'customer.row.line': 'Der Weg zum Kopf ({who})',
  'customer.row.misfits': 'Lautsprecher, die nicht passen',
  'customer.row.keepClear': 'Lautsprecher in freizuhaltenden Bereichen',

  'customer.known': 'Was gemessen und was angenommen wurde',
  'customer.known.measured': 'In diesem Auto gemessen oder festgelegt: {what}.',
  'customer.known.nothing': 'Vom Innenraum wurde in diesem Auto noch nichts gemessen.',
  'customer.known.item': '{what} {value}',
  'customer.known.depth': 'Tiefe hinter: {panel} {value}',
  'customer.known.airspace': 'Luftraum hinter: {panel} {value} l',
  'customer.known.tapes':
    '{count, plural, one {# Strecke mit dem Maßband} other {# Strecken mit dem Maßband}}',
  'customer.known.sounds':
    '{count, plural, one {# Strecke mit Schall} other {# Strecken mit Schall}}',
  'customer.known.arrivals': 'die Ankunft von {count, plural, one {# Kanal} other {# Kanälen}}',
  'customer.known.panels': '{count, plural, one {# Fläche} other {# Flächen}} von Hand eingegeben',
  'customer.known.assumed':
    'Angenommen: {count, plural, one {# Maß} other {# Maße}} des Innenraums als typisch für die Bauform „{body}“, aus dem Gedächtnis.',
  'customer.known.none-derived':
    'Es wurde keine Bauform angenommen: jede Fläche wurde von Hand eingegeben.',
  'customer.known.person':
    'Gerechnet wird mit einer Person von {height} und Luft von {temperature}.',
  'customer.known.person-less': 'Gerechnet wird mit Luft von {temperature}.',
  'customer.known.depths':
    'Tiefen hinter Flächen, die oben nicht genannt sind, sind übliche Werte; dort muss bei abgenommener Verkleidung nachgesehen werden.',
  'customer.cautions': 'Bevor geschnitten wird',
  'customer.zone': '{letter}, {speaker}: {zones}.',
};
