export const strip = {
  'strip.title': 'Wie der Schall Sie erreicht',
  'strip.lead':
    'Bis zu {time}, zweimal. Zu sehen ist das nicht: ein Wimpernschlag dauert um ein Vielfaches länger.',
  'strip.none': 'Wie gebaut: alle Lautsprecher beginnen im selben Augenblick.',
  'strip.aligned': 'Auf Ihren Platz eingestellt: die näheren warten, und alles kommt gemeinsam an.',
  'strip.aligned.other': 'Auf einen anderen Platz eingestellt: {seat}.',
  'strip.aligned.several': 'Als Kompromiss zwischen mehreren Plätzen eingestellt.',
  'strip.starts': '{who} {count, plural, one {beginnt} other {beginnen}}',
  'strip.starts.all': 'Alle {count} Lautsprecher beginnen',
  'strip.arrives': '{who} {count, plural, one {kommt an} other {kommen an}}',
  'strip.arrives.all': 'Alle {count} kommen gemeinsam an',
  'strip.way': 'Unterwegs',
  'strip.more': '{first} und {count} weitere',
  'strip.there': '{count, plural, =0 {noch keiner da} other {# von {all} da}}',
  'strip.key':
    'Von oben gesehen, in Höhe Ihrer Ohren geschnitten. Eine Linie zeigt, wo der Schall eines Lautsprechers diese Höhe schneidet: durchgezogen von links, gestrichelt von rechts, kräftiger für tiefere Töne; die Tönung ist der übrige Teil seiner Kugel, tiefer oder höher. Ein Punkt ist Schall, der etwas im Weg umgeht. Berechnet, nicht gemessen; nur der direkte Schall, ohne was die Scheiben zurückwerfen.',
  'strip.picture': 'Die Ankunft des Schalls in Bildern. {what}',
};
