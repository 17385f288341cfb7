/** Das Ringblatt: für alle, die die Einbauringe drehen, sägen oder drucken. */
export const ring = {
  'ring.title': 'Einbauringe: {option}',
  'ring.intro':
    'Ein Ring dreht die Senkrechte der Fläche in die Ausrichtung seines Lautsprechers: Der Rücken liegt auf der Fläche, die Stirn steht rechtwinklig zur Achse, und die Bohrung läuft entlang der Achse. Die Schnitte gehen von der dünnen zur dicken Seite.',
  'ring.none':
    'In dieser Variante steht kein Lautsprecher auf einem Ring. Das Blatt „Ring“ neben dem Brett setzt ihn darauf.',
  'ring.free':
    'Kein Ring für: {speaker}. Er steht an einem freien Punkt, und ein Ring braucht eine Fläche unter sich.',
  'ring.of': 'Ring für: {speaker}',
  'ring.where': 'Einbauort: {panel}. Abstand an der Stelle: {mm}.',
  'ring.refused-standoff':
    'Diesen Ring gibt es noch nicht: Er braucht {mm} mehr Abstand zur Fläche.',
  'ring.refused-measures':
    'Diesen Ring gibt es nicht: Seine Maße passen nicht zueinander. Siehe das Blatt „Ring“.',
  'ring.steep':
    'Der Keil liegt über der Grenze von {deg}: näher an der Senkrechten ausrichten, eine andere Stelle nehmen oder ein eigenes Gehäuse bauen.',
  'ring.thick':
    'Dicke Seite auf {hour} Uhr ({deg} im Uhrzeigersinn von 12 Uhr), vom Innenraum aus gesehen; 12 Uhr ist {way, select, up {oben} front {vorn} rear {hinten} left {links} right {rechts} other {unten}}.',
  'ring.lift':
    'Die Fläche ist dort gewölbt: Der ebene Rücken hebt bis zu {mm} von ihr ab. Der Fläche anpassen oder unterfüttern.',
  'ring.true-size': 'Schnitt in wahrer Größe',
  'ring.scaled': 'Schnitt in {percent} der wahren Größe',
  'ring.bar': '{mm} in dieser Größe',
  'ring.section': 'Schnitt durch den Ring für: {speaker}',
  'ring.measure': 'Maß',
  'ring.value': 'Wert',
  'ring.outer': 'Außendurchmesser',
  'ring.bore': 'Bohrung, entlang der Achse',
  'ring.recess': 'Einlass für den Flansch',
  'ring.recess-value': '{mm}, {depth} tief',
  'ring.rim': 'Radius der äußeren Vorderkante',
  'ring.rim-sharp': 'scharf',
  'ring.thickness': 'Dicke',
  'ring.thin-outer': 'Außenrand, dünne Seite',
  'ring.thick-outer': 'Außenrand, dicke Seite',
  'ring.thin-bore': 'An der Bohrung, dünne Seite',
  'ring.thick-bore': 'An der Bohrung, dicke Seite',
  'ring.middle': 'In der Mitte',
  'ring.wedge': 'Keil: Sägeschnitt des Rückens',
  'ring.back': 'Rücken auf der Fläche',
  'ring.hole': 'Loch in der Fläche',
  'ring.hole-none':
    'Keines: Der Korb steht ganz vor der Fläche. Nur Leitungen und Befestigungen gehen hindurch.',
  'ring.hole-middle': 'Mitte dieses Lochs neben der Stelle',
  'ring.back-middle': 'Mitte des Rückens neben der Stelle',
  'ring.screws': 'Schrauben',
  'ring.screws-value': '{count} auf {mm}',
  'ring.under': 'Ring unter den Schrauben',
  'ring.range': '{least} bis {most}',
  'ring.material': 'Werkstoff',
  'ring.boards':
    '{count, plural, one {Eine Platte von {board} nehmen} other {# Platten von {board} zu einem Rohling verleimen}}, auf {outer} drehen und rechtwinklig zur Stirn bohren; dann {wedge, select, yes {den Rücken unter {deg} absägen, sodass auf der einen Seite {thin} und auf der anderen {thick} bleiben} other {den Rücken auf {thick} abnehmen}}. Die Breite des Sägeschnitts ist in diesen Maßen nicht enthalten.',
  'ring.thin-side': 'dünne Seite',
  'ring.thick-side': 'dicke Seite',
  'ring.panel': 'Fläche',
  'ring.angle': 'Keil {deg}',
  'ring.zone': 'Lautsprecher oder Ring ragt hinein in: {zone}.',
  'ring.rim-advice':
    'Ein Kantenradius von {mm} ist, was UN R21 verlangt, wo ein Kopf eine harte Kante erreichen kann, nach Angaben zweiter Hand: ein Rat, keine Genehmigung.',
};
