/** The couple's mails in Spanish, every sentence of them; the British sentence is the key. To the couple one speaks as to two, to who looks as to one. */
export const es = {
  "Dear {names},": "Hola, {names}:", "Layout due by": "Distribución antes del fin del", "Your day": "Su día", "Package": "Paquete", "Reference": "Referencia", "Revision": "Revisión", "Fingerprint": "Huella",
  "Open your layout": "Abrir su distribución", "today": "hoy", "now": "ahora", "tomorrow": "mañana", "in {n} days": { one: "dentro de {n} día", other: "dentro de {n} días" },
  "in about {n} months": "dentro de unos {n} meses", "in about {n} years": "dentro de unos {n} años", "in about {n} and a half years": "dentro de unos {n} años y medio",
  "A plan made with Marquetry is a planning aid. The venue's posted figures and its own safety plan govern, and a competent person must check before the doors open.": "Un plano hecho con Marquetry es una ayuda para planificar. Rigen el aforo autorizado y el plan de seguridad de la propia casa, y una persona competente debe revisarlo antes de abrir las puertas.",

  "Your room layout for {day} at {venue}": "La distribución de su sala para el {day} en {venue}",
  "You are booked at {venue}. Before the day you choose one layout of the rooms: where the tables stand, where the music plays, where everything else goes. Answer a few questions and you are shown what fits, drawn to scale.": "Su reserva en {venue} está hecha. Antes del día eligen una distribución de las salas: dónde van las mesas, dónde la música y dónde todo lo demás. Respondan unas preguntas y verán qué cabe, dibujado a escala.",
  "It takes about twenty minutes. Each step is saved when you press its button, so you may stop after any of them and come back by this same link. It is yours alone: whoever has it can see and change your answers.": "Lleva unos veinte minutos. Cada paso se guarda al pulsar su botón, así que pueden parar después de cualquiera y volver por este mismo enlace. Es solo suyo: quien lo tenga puede ver y cambiar sus respuestas.",
  "Where you are not sure yet, say so and go on: your coordinator reads what you send and answers it.": "Donde aún no estén seguros, díganlo y sigan: su coordinación lee lo que envían y responde.",
  "Where you are not sure yet, say so and go on. With your package the choice is yours; the venue reads it before the day.": "Donde aún no estén seguros, díganlo y sigan. Con su paquete la elección es suya; la casa la lee antes del día.",

  "We have your layout, revision {number} ({reference})": "Hemos recibido su distribución, revisión {number} ({reference})",
  "Your layout for {day} has reached {venue} as revision {number}. It is not agreed yet: the venue reads it, and then agrees it or returns it to you with a reason. You will have a mail either way.": "Su distribución para el {day} ha llegado a {venue} como revisión {number}. Aún no está acordada: la casa la lee y después la acuerda o se la devuelve con un motivo. Recibirán un correo en ambos casos.",
  "See what you sent": "Ver lo que enviaron",

  "Your layout needs a change ({reference}, revision {number})": "Su distribución necesita un cambio ({reference}, revisión {number})",
  "{venue} has read revision {number} and returned it, with these words:": "{venue} ha leído la revisión {number} y la devuelve con estas palabras:", "They are about: {pieces}.": "Se trata de: {pieces}.",
  "Change what is asked and send it again, by {day}. Nothing that you answered is lost.": "Cambien lo que se pide y envíenla de nuevo antes del fin del {day}. No se ha perdido nada de lo respondido.",

  "Agreed: your layout for {day} ({reference})": "Acordada: su distribución para el {day} ({reference})",
  "{venue} agrees to revision {number} of your layout. It now stands as it is: answers, plan, the venue's facts and prices. The fingerprint below is printed on its proposal too; another fingerprint is another layout.": "{venue} acuerda la revisión {number} de su distribución. Queda tal como está: respuestas, plano, datos y precios de la casa. La huella de abajo figura también en su propuesta; otra huella es otra distribución.",
  "See the agreed layout": "Ver la distribución acordada",

  "Your layout was adjusted: revision {number} ({reference})": "Se ha ajustado su distribución: revisión {number} ({reference})",
  "{venue} has moved something on the plan that you sent. It stands as revision {number} and is not agreed yet. See what changed; if it is not what you want, tell the venue.": "{venue} ha movido algo en el plano que enviaron. Queda como revisión {number} y aún no está acordada. Miren qué ha cambiado; si no es lo que quieren, díganselo a la casa.",
  "See your layout": "Ver su distribución",

  "Your layout for {n} guests: revision {number} ({reference})": { one: "Su distribución para {n} invitado: revisión {number} ({reference})", other: "Su distribución para {n} invitados: revisión {number} ({reference})" },
  "{venue} has changed your agreed layout for {n} guests, moving as little as it could. It stands as revision {number} and is not agreed yet; until it is, the revision that was agreed holds.": {
    one: "{venue} ha cambiado su distribución acordada para {n} invitado, moviendo lo menos posible. Queda como revisión {number} y aún no está acordada; hasta entonces vale la que se acordó.",
    other: "{venue} ha cambiado su distribución acordada para {n} invitados, moviendo lo menos posible. Queda como revisión {number} y aún no está acordada; hasta entonces vale la que se acordó.",
  },
  "See what changed": "Ver qué ha cambiado",

  "A first draft of your layout for {day} ({reference})": "Un primer borrador de su distribución para el {day} ({reference})",
  "{venue} has made a draft for you: {title}. It is yours to change: answer what is still open, choose another layout, or send this one as it is.": "{venue} les ha preparado un borrador: {title}. Pueden cambiarlo: respondan lo que quede abierto, elijan otra distribución o envíen esta tal como está.",
  "See the draft": "Ver el borrador",

  "How many are you? Your final numbers are due {when} ({reference})": "¿Cuántos son? El plazo de su número definitivo: {when} ({reference})",
  "{venue} needs your final numbers by {due}: how many sit down to eat on {day}. If they differ from your layout, the venue changes it as little as it can.": "{venue} necesita su número definitivo antes del fin del {due}: cuántos se sientan a comer el {day}. Si difiere de su distribución, la casa la cambia lo menos posible.",
  "Give your numbers": "Dar su número",

  "Your room layout is due {when} ({reference})": "El plazo de su distribución: {when} ({reference})",
  "Your layout for {day} at {venue} is due {when}: by {due}.": "El plazo de su distribución para el {day} en {venue} termina {when}: el {due}.",
  "What you have answered is kept; go on where you stopped.": "Lo respondido está guardado; sigan donde lo dejaron.", "It takes about twenty minutes, and you may stop after any step.": "Lleva unos veinte minutos, y pueden parar después de cualquier paso.",
  "Once you have sent it, no more of these come. If you want none in any case:": "Cuando la hayan enviado no llegarán más recordatorios. Si no quieren ninguno en ningún caso:", "No more reminders": "No recibir más recordatorios",

  "Your room layout was due ({reference})": "Ha vencido el plazo de su distribución ({reference})",
  "Your layout for {day} was due by {due}, and none has come.": "El plazo de su distribución para el {day} era el {due}, y no ha llegado ninguna.",
  "Open your layout and send it, or speak with {venue}.": "Abran su distribución y envíenla, o hablen con {venue}.",
  "{venue} has therefore set its own standard layout, “{title}”. It is set by the venue and not agreed. If another would suit you better, speak with the venue, or send yours: whether it still can be had is for the venue to say.": "Por eso {venue} ha puesto su distribución habitual, «{title}». La ha puesto la casa y no está acordada. Si otra les viene mejor, hablen con la casa o envíen la suya: si aún puede ser, lo dice la casa.",

  "{couple}: how their day at {venue} is laid": "{couple}: cómo se dispone su día en {venue}",
  "{couple} would like you to see how their day at {venue} is laid out: where the tables stand, where the music plays, and what they have answered so far. You can look, as often as you like; nothing can be changed by this link.": "{couple} quieren que vea cómo se dispone su día en {venue}: dónde van las mesas, dónde la música y lo que han respondido hasta ahora. Puede mirar cuantas veces quiera; con este enlace no se puede cambiar nada.",
  "Their day": "Su día", "Look at their day": "Ver su día", "They can withdraw the link at any time. If you do not know them, let this mail be.": "Pueden retirar el enlace cuando quieran. Si no los conoce, no haga caso de este correo.",
} as const;
