/** Das Anreißblatt: für den Einbau mit Bandmaß, Neigungsmesser und Laser im wirklichen Auto. */
export const markOut = {
  'mark.title': 'Anreißen: {option}',
  'mark.intro':
    'Türen zu, niemand im Auto, Vordersitze dort, wo der Plan sie hat. Von jedem nummerierten Punkt führt das Bandmaß gerade zur Stelle; wo sich die ersten drei treffen, wird angerissen. Die Zahlen stammen aus dem Modell: Liegt ein Punkt in diesem Auto anderswo, zuerst messen und in den Plan eintragen.',
  'mark.none': 'In dieser Variante gibt es noch keinen Lautsprecher.',
  'mark.speaker': '{speaker}: {panel}',
  'mark.speaker-free': '{speaker}, an einem freien Punkt',
  'mark.near': 'Wo die Punkte liegen: {speaker}',
  'mark.way-up':
    '{way, select, up {↑ oben} front {↑ vorn} rear {↑ hinten} left {↑ links} right {↑ rechts} other {↑ unten}}',
  'mark.way-right':
    '{way, select, front {vorn →} rear {hinten →} left {links →} right {rechts →} up {oben →} other {unten →}}',
  'mark.tapes': 'Mit dem Bandmaß zur Stelle',
  'mark.distance': 'Maß',
  'mark.check': 'zum Prüfen',
  'mark.error':
    'Bei Bandmaßen, die auch einmal {sd} falsch sind, liegen 95 von 100 Rissen höchstens {error} neben der Stelle.',
  'mark.no-fix':
    'Keine drei Punkte in Reichweite eines Bandmaßes legen diese Stelle fest{by, select, both {: nach den Höhen und der Schablone anreißen} heights {: nach den Höhen anreißen} other {}}. In den Achsen des Plans liegt sie bei x {x} (nach hinten), y {y} (nach rechts) und z {z} (nach oben).',
  'mark.heights': 'Höhe',
  'mark.above-sill': '{mm} über der Oberkante des Schwellers',
  'mark.above-rail': '{mm} über den Schrauben der Sitzschiene',
  'mark.below-sill': '{mm} unter der Oberkante des Schwellers',
  'mark.below-rail': '{mm} unter den Schrauben der Sitzschiene',
  'mark.aim': 'Ausrichtung',
  'mark.face':
    'Ein Lineal {held, select, lengthwise {längs} crosswise {quer} other {aufrecht}} am Flansch: {deg} gegen die Waagerechte{end, select, level {} front {, vorderes Ende höher} rear {, hinteres Ende höher} left {, linkes Ende höher} right {, rechtes Ende höher} lean_front {, oben nach vorn geneigt} lean_rear {, oben nach hinten geneigt} lean_left {, oben nach links geneigt} lean_right {, oben nach rechts geneigt} other {}}.',
  'mark.laser':
    'Ein Laser entlang der Achse trifft bei leeren Sitzen: {thing}, {distance} entfernt; von dort {near}.',
  'mark.laser-far': 'Ein Laser entlang der Achse trifft auf {distance} nichts.',
  'mark.laser-point': '{distance} bis „{point}“',
  'mark.no-aim': 'Die Ausrichtung hat keine Richtung.',
  'mark.cut': 'Ausschnitt',
  'mark.cut-round': 'Rund, {mm}.',
  'mark.cut-oval': 'Oval, {long} mal {short}: die Öffnung von {mm} entlang der geneigten Achse.',
  'mark.cut-off':
    'Seine Mitte liegt {mm} neben der Stelle, auf {hour} Uhr ({deg} im Uhrzeigersinn von 12 Uhr) vom Innenraum aus gesehen; 12 Uhr ist {way, select, up {oben} front {vorn} rear {hinten} left {links} right {rechts} other {unten}}.',
  'mark.cut-none':
    'Keiner: Der Korb steht ganz vor der Fläche. Nur Leitungen und Befestigungen gehen hindurch.',
  'mark.body-before': 'Flansch {flange}, Tiefe {depth}.',
  'mark.body': 'Flansch {flange}, Tiefe {depth}, davon {behind} hinter der Fläche.',
  'mark.no-body':
    'Es sind keine Einbaumaße eingegeben: den Ausschnitt der Zeichnung des Lautsprechers entnehmen.',
  'mark.no-template':
    'Dafür gibt es keine Schablone: Sie braucht eine Fläche, die Einbaumaße und eine Ausrichtung aus der Fläche heraus.',
  'mark.standoff': 'Abstand zur Fläche: {mm}.',
  'mark.ring': 'Auf einem Ring: außen {outer}, {thin} bis {thick} dick, Keil {deg}.',
  'mark.ring-even': 'Auf einem Ring: außen {outer}, {thick} dick.',
  'mark.ring-steep':
    'Der Keil hat mehr als {deg}: Ausrichtung oder Stelle überdenken, oder ein eigenes Gehäuse bauen.',
  'mark.ring-none': 'So, wie er geplant ist, gibt es diesen Ring nicht: siehe das Ringblatt.',
  'mark.zones': 'Freihalten',
  'mark.zone': 'Ragt hinein in: {zone}.',
  'mark.zones-many':
    'Ragt in {count, plural, one {einen freizuhaltenden Bereich} other {# freizuhaltende Bereiche}}, beim Namen genannt bei diesem Lautsprecher auf dem Anreißblatt: vor dem Weitermachen dort lesen.',
  'mark.misfits': 'Passt so nicht',
  'misfit.outline':
    '{ring, select, yes {der Ring} other {der Flansch}} ragt {by} über den Rand: {thing}',
  'misfit.curvature': 'die Fläche ist für den Flansch um {by} zu stark gewölbt: {thing}',
  'misfit.cutout': 'der Ausschnitt ragt {by} über den Rand: {thing}',
  'misfit.depth': '{by} zu tief: {thing}',
  'misfit.airspace': '{by} zu wenig Luftraum: {thing}',
  'misfit.no-air': 'das geschlossene Gehäuse hat so keinen Luftraum: {thing}',
  'misfit.into': '{ring, select, yes {der Ring} other {er}} ragt {by} hinein: {thing}',
  'misfit.inside': '{ring, select, yes {der Ring} other {er}} steht darin: {thing}',
  'misfit.no-panel': 'hier lässt sich nichts befestigen: {thing}',
  'misfit.ring': 'der Ring braucht {by} mehr Abstand',
  'misfit.bore': 'die Bohrung des Rings ist für den Lautsprecher {by} zu eng',
  'misfit.flange': 'der Ring hält den Flansch nicht: siehe das Blatt „Ring“',
  'misfit.free-ring': 'an einem freien Punkt hat der Ring keine Fläche, auf der er steht',
  'misfit.no-ring': 'die Maße des Rings passen nicht zueinander',
  'mark.look-up': 'Vor dem Schneiden hier nachlesen: {titles}.',
  'mark.cautions': 'Bevor etwas geschnitten wird',
  'template.title': '{speaker}: Schablone',
  'template.tile': 'Blatt {name} von {count}',
  'template.print':
    'Mit 100 %, „tatsächlicher Größe“, drucken. Vor Gebrauch beide Lineale nachmessen:',
  'template.measured': 'auf dem Papier gemessen:',
  'template.across': 'quer',
  'template.up': 'hoch',
  'template.refuse': 'Mehr als {most} neben 100 mm: dieses Blatt nicht verwenden.',
  'template.lay':
    'Das Kreuz auf die Stelle legen, die bedruckte Seite zum Betrachter, und drehen, bis die nummerierten Striche auf ihre Bezugspunkte zeigen; der Pfeil zeigt dann {way, select, up {gerade die Fläche hinauf} front {nach vorn} rear {nach hinten} left {nach links} right {nach rechts} other {nach unten}}.',
  'template.lay-face':
    'Für die Stirn des Gehäuses, rechtwinklig zur Achse: Das Kreuz ist die Mitte der Vorderseite des Lautsprechers, und der Pfeil zeigt am fertigen Gehäuse {way, select, up {nach oben} front {nach vorn} rear {nach hinten} left {nach links} right {nach rechts} other {nach unten}}. Durch die Fläche selbst gehen nur Leitungen und Befestigungen.',
  'template.screws': 'Lochkreis {mm}',
  'template.flat': 'Die Schablone ist eben, und die Fläche ist es dort auch.',
  'template.curved':
    'Die Schablone ist eben und liegt in der Ebene, die die Fläche an der Stelle berührt; am Rand des Gezeichneten weicht die Fläche bis zu {mm} davon ab. Von der Stelle nach außen andrücken, ohne Falten.',
  'template.on-ring':
    'Alles ist so gezeichnet, wie es entlang der geneigten Achse auf die Fläche fällt: am Lautsprecher rund, hier oval.',
  'template.curve-own':
    'Über die Schrauben entscheidet die Zeichnung des Lautsprechers; gezeichnet ist der übliche Lochkreis.',
  'template.spot': 'Stelle',
  'template.aim': 'Achse, um {deg} geneigt',
  'template.way':
    '{way, select, up {oben} front {vorn} rear {hinten} left {links} right {rechts} other {unten}}',
  'template.cutout': 'Ausschnitt {mm}',
  'template.flange': 'Flansch {mm}',
  'template.ring': 'Ring {mm}',
  'template.glue': 'auf {name} legen, Kreuz auf Kreuz',
  'printer.title': 'Druckt der Drucker maßhaltig?',
  'printer.ask':
    'Die Schablonen drucken, beide Lineale auf dem Papier nachmessen und eintragen, was sie messen.',
  'printer.across': 'Lineal quer, mm',
  'printer.up': 'Lineal hoch, mm',
  'printer.unread': 'Beides als Länge eingeben, etwa 99,8 oder 3,93 in.',
  'printer.good':
    'Genau genug: quer {across}, hoch {up}. Eine Länge von {mm} wird höchstens {off} falsch.',
  'printer.bad':
    'Diese Schablonen dürfen nicht verwendet werden: Der Drucker hat sie quer um {across} und hoch um {up} verändert, erlaubt sind höchstens {most}. Noch einmal mit 100 % drucken („tatsächliche Größe“, nicht an die Seite anpassen) und wieder nachmessen.',
  'printer.stamp': 'Druck nicht maßhaltig: nicht verwenden',
};
