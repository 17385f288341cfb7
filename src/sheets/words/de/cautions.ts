export const cautions = {
  'caution.short':
    'Startwerte aus der Geometrie: vor dem Schneiden jede Stelle mit den Unterlagen des Fahrzeugherstellers vergleichen, vor dem Fahren jede Verzögerung durch Messen und Hören prüfen.',
  'caution.maker-first.title': 'Die Unterlagen des Herstellers gehen vor',
  'caution.maker-first.text':
    'Bevor eine Verkleidung abgenommen wird: die Karosserie- und Rückhaltesystem-Unterlagen des Fahrzeugherstellers für genau dieses Auto lesen. Die hier gezeigten Stellen, Zonen und Tiefen sind typische Werte einer Bauform, keine Vermessung des Autos, das vor Ihnen steht; wo sie abweichen, haben das Auto und seine Unterlagen recht.',
  'caution.airbags.title': 'Airbags und Gurte',
  'caution.airbags.text':
    'Vorhangairbags entfalten sich entlang der A-Säule und des Dachrands, Knie- und Frontairbags aus dem Armaturenbrett, andere aus Sitzen und Türen. Auf, hinter oder vor einer Abdeckung, die sie brauchen, nichts befestigen und keine solche Abdeckung verändern. Batterie abklemmen und so lange warten, wie der Hersteller es vorgibt; Arbeiten an Rückhaltesystemen gehören in die Hände dafür ausgebildeter und zugelassener Leute.',
  'caution.sight.title': 'Die Sicht auf die Straße',
  'caution.sight.text':
    'Ein Aufbau an der Säule, im Spiegeldreieck oder auf dem Armaturenbrett verdeckt einen Teil der Straße, einen Spiegel oder eine Warnleuchte. Vor dem Befestigen im Sitz Platz nehmen und hinsehen. Was im Sichtfeld und im Wischfeld der Windschutzscheibe stehen darf, begrenzen die örtlichen Zulassungsvorschriften; sie entscheiden, nicht dieser Plan.',
  'caution.pedals.title': 'Pedale, Lenkung und Füße',
  'caution.pedals.text':
    'Nichts darf ein Pedal, die Lenksäule, einen Schuh oder die Fußstütze auf ihrem ganzen Weg berühren, weder jetzt noch wenn sich eine Befestigung gelockert hat. Mit den dicksten Schuhen, dem Sitz an beiden Enden der Schienen und der Lenkung an beiden Anschlägen ausprobieren.',
  'caution.behind.title': 'Was hinter der Verkleidung liegt',
  'caution.behind.text':
    'Kabelbäume, Kraftstoff-, Brems- und Kühlmittelleitungen, Fensterscheiben, Airbagsensoren und in Elektro- und Hybridautos orangefarbene Hochvoltkabel verlaufen hinter Verkleidungen. Vor dem Bohren die Verkleidung abnehmen und nachsehen. Orangefarbene Kabel und alles, was Sie nicht benennen können, in Ruhe lassen.',
  'caution.impact.title': 'Kanten und Befestigungen',
  'caution.impact.text':
    'Bei einem Unfall oder einer Vollbremsung erreichen Köpfe und Knie die Säulen, das Armaturenbrett und die Türen. Jede harte Kante gut abrunden, jeden Aufbau und jedes Gitter an tragenden Teilen statt an der Verkleidung befestigen und harte Teile aus der Reichweite eines Kopfes halten, wo es eine Wahl gibt. Es gelten die örtlichen Vorschriften für die Innenausstattung.',
  'caution.structure.title': 'Karosserie und Wasser',
  'caution.structure.text':
    'Verkleidung schneiden, nicht Karosserie: Säulen, Schweller, Türträger und Boden tragen im Unfall. Ein Loch im Türblech oder in dessen Feuchtigkeitsfolie muss wieder abgedichtet, blankes Metall geschützt werden.',
  'caution.enclosures.title': 'Gehäuse im Fußraum, auf dem Boden oder in der Tür',
  'caution.enclosures.text':
    'Ein Gehäuse muss Pedale, Fußstütze, Sitzschienen und einen Weg aus dem Auto frei lassen und so befestigt sein, dass es bei einem Unfall bleibt, wo es ist. Platz schafft man mit dem Gehäuse, nicht mit der Karosserie: Blech an Boden, Schweller und Fußraum wird nicht geschnitten oder gehämmert, und Abläufe, Entlüftungen, Fensterweg und Sensoren der Rückhaltesysteme behalten ihren Platz. Unter dem Boden eines Elektro- oder Hybridautos liegt die Hochvoltbatterie: dort nichts bohren.',
  'caution.electrics.title': 'Leitungen',
  'caution.electrics.text':
    'Jede Zuleitung an der Batterie passend zu ihrem Querschnitt absichern, Leitungen durch Blech in Tüllen führen und die örtlichen Elektrovorschriften sowie die Hinweise des Herstellers zu zusätzlichen Verbrauchern beachten. Arbeiten, die das Gesetz zugelassenen Betrieben vorbehält, bleiben deren Sache.',
  'caution.tune.title': 'Verzögerungen und Pegel',
  'caution.tune.text':
    'Diese Zahlen stammen aus der Geometrie: der geraden Linie zu jedem Sitz oder dem kürzesten Weg um das herum, was darin steht. Frequenzweichen, Prozessoren und der Innenraum fügen eigene Zeiten und Pegel hinzu. Bei kleiner Lautstärke eingeben, messen, dann hören; niemals während der Fahrt verstellen, und nur so laut, dass Verkehr, Sirenen und Mitfahrende zu hören bleiben.',
  'caution.zone.given': 'Der Lautsprecher ragt in eine von Ihnen markierte Zone.',
  'caution.zone.usual':
    'Der Lautsprecher ragt in den Bereich, der dafür in einer solchen Bauform üblich ist. Ob dieses Auto ihn genau dort hat oder auch anderswo, lässt sich von hier aus nicht sagen: die Unterlagen des Herstellers und das Auto selbst entscheiden.',
  'caution.zone.none':
    'keine bekannt; die Unterlagen des Herstellers und das Auto selbst entscheiden',
};
