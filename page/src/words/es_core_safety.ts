// De la hoja de la visita: la seguridad, y qué hace cada ajuste.
import type { Forms } from "./translated";

const settings: Forms = [
  ["pressure to hold at the sensor", "presión a mantener en el sensor"],
  ["a sleeping pump restarts this far below the target", "una bomba dormida arranca otra vez tanto debajo de la presión a mantener"],
  ["stops at once above this", "para de inmediato arriba de esto"],
  ["upper end of the sensor's span", "extremo superior del alcance del sensor"],
  ["added to the reading", "se suma a la lectura"],
  ["most current the motor may take", "lo más que puede tomar el motor"],
  ["slowest speed while running", "lo más lento que gira en marcha"],
  ["fastest speed", "lo más rápido que gira"],
  ["fastest rise of speed", "subida más rápida de la velocidad"],
  ["fastest fall of speed", "bajada más rápida de la velocidad"],
  ["speed for each step of missing pressure", "velocidad por cada paso de presión que falta"],
  ["time in which the lasting error doubles the answer", "tiempo en que un error que permanece duplica la respuesta"],
  ["at or under this speed nobody is thought to draw water", "a esta velocidad o menos se supone que nadie consume"],
  ["for so long, before the ramp to sleep begins", "durante este tiempo, antes de que empiece la rampa para dormir"],
  ["pressure may fall this far below target on the way to sleep", "lo que puede bajar la presión en camino a dormir"],
  ["fall of speed on the way to sleep", "bajada de la velocidad en camino a dormir"],
  ["under this at full speed the pump has lost its water", "debajo de esto, a toda velocidad, la bomba perdió su agua"],
  ["for so long, before it stops", "durante este tiempo, antes de parar"],
  ["wait before the next try", "espera antes del siguiente intento"],
  ["under this at full speed the pump turns against a shut line", "debajo de esto, a toda velocidad, la bomba gira contra una línea cerrada"],
  ["longest run without sleep", "marcha más larga sin dormir"],
  ["line fill: longest time at fill speed", "llenado: tiempo más largo a la velocidad de llenar"],
  ["line fill: speed on an empty line", "llenado: velocidad con la línea vacía"],
  ["outside contact that allows running", "contacto externo que permite la marcha"],
  ["contact that tells of a stop", "contacto que avisa de un paro"],
  ["the pressure switch opens at", "el interruptor de presión abre a"],
  ["it closes at", "cierra a"],
  ["unused", "sin usar"],
];

export const forms: Forms = [
  ...settings,
  ["Lock out, tag out", "Candado y etiqueta"],
  [
    "Disconnect open, your own lock and tag on it; terminals proved dead with a meter tried on a live source before and after.",
    "Desconectador abierto, con su propio candado y etiqueta; bornes comprobados sin tensión con un medidor probado en una fuente viva antes y después.",
  ],
  ["Stored charge", "Carga guardada"],
  [
    "After power is off wait as long as the drive's own label says (write it here), then measure across the direct-current link.",
    "Quitada la luz, espere lo que diga la etiqueta del propio variador (anótelo aquí) y mida después en el enlace de corriente continua.",
  ],
  ["Relief valve", "Válvula de alivio"],
  ["None is told.", "No se dice de ninguna."],
  ["That of {} opens too late.", "La de {} abre demasiado tarde."],
  ["That of {} stays fitted; try its lever: {} may bear as little as {}.", "La de {} se queda puesta; pruebe su palanca: lo más débil ({}) puede aguantar solo {}."],
  ["Fit one at the tank, set to {} at most: {} may bear as little as {}.", "Ponga una en el tanque, a {} como mucho: lo más débil ({}) puede aguantar solo {}."],
  ["Fit one set to {} at most: {} may bear as little as {}.", "Ponga una a {} como mucho: lo más débil ({}) puede aguantar solo {}."],
  [
    "It has to pass {}, the pump's flow, with nothing that shuts between it and the pump.",
    "Tiene que dejar pasar {}, el caudal de la bomba, sin nada que se pueda cerrar entre ella y la bomba.",
  ],
  ["Pressure", "Presión"],
  ["Drain to nothing before any joint is opened.", "Vacíe del todo antes de abrir cualquier unión."],
  ["Drinking water", "Agua de beber"],
  [
    "After opening well or line: disinfect, flush, have the water tested; nobody drinks it before.",
    "Después de abrir el pozo o la línea: desinfecte, enjuague y haga analizar el agua; antes nadie la bebe.",
  ],
  ["Code and licence", "Reglamento y licencia"],
  [
    "Local code, the makers' instructions and the health authority decide; electrical and well work by those licensed for it here.",
    "Deciden el reglamento local, las instrucciones de los fabricantes y la autoridad sanitaria; el trabajo eléctrico y el del pozo, por quienes tienen licencia para ello aquí.",
  ],
];
