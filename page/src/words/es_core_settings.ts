// Lo que el núcleo dice de los ajustes: sus razones, lo que los impide y qué lo cambiaría.
import { forms as assumed } from "./es_core_assumed";
import type { Forms } from "./translated";

const phrases: Forms = [
  ["the fittings", "las conexiones"],
  ["the tank", "el tanque"],
  ["the yard pipe", "el tubo del pozo al tanque"],
  ["the house pipe", "el tubo del tanque a las llaves"],
  ["the drop pipe", "el tubo de bajada"],
  ["the relief valve", "la válvula de alivio"],
  ["the full scale of the sensor", "el alcance del sensor"],
];

const pressure: Forms = [
  [
    "{} wanted at the highest outlet, {} for its height over the tee, {} for house friction at {}; with the sensor's errors and all draws {} to {}, rounded up.",
    "{} que se desean en la llave más alta, {} por su altura sobre la conexión del tanque y {} por la fricción en la casa con {}; con los errores del sensor y en todos los sorteos son {} a {}, y se redondea hacia arriba.",
  ],
  [
    "At the ceiling of {} it sags under {} in {} of {} draws, to {} % of what is wanted at the highest outlet in the worst.",
    "A la velocidad máxima de {} la presión baja con {} en {} de {} sorteos; en el peor, hasta el {} % de lo deseado en la llave más alta.",
  ],
  [
    "Under {} the highest outlet keeps {} % of what is wanted there in the worst draw, {} % in the middle one.",
    "Con {} la llave más alta conserva el {} % de lo deseado ahí en el peor sorteo, y el {} % en el sorteo medio.",
  ],
  [
    "A pump with more head or a higher ceiling (see speed.ceiling), less wanted at the highest outlet, or a smaller peak draw.",
    "Una bomba con más carga o una velocidad máxima más alta (vea speed.ceiling), desear menos presión en la llave más alta o un consumo máximo menor.",
  ],
  ["The target of {} is not below the rating of {}, {}.", "La presión a mantener de {} no queda debajo de la presión admisible para {}, {}."],
  ["Parts of a higher class, or less pressure at the highest outlet.", "Piezas de una clase más alta, o menos presión en la llave más alta."],
  ["See pressure.target.", "Vea la presión a mantener (pressure.target)."],
  [
    "The tank gives {} to {} over this drop, {} to {} of the least draw; to feed it for {} takes {} at the most.",
    "En esta caída el tanque da de {} a {}, y eso alcanza entre {} y {} para el consumo mínimo; alimentarlo durante {} pide una caída de {} como máximo.",
  ],
  [
    "The highest outlet can spare {} while little flows and {} under the served peak ({} and {} % of what is wanted there, common practice); the precharge is {} below the target.",
    "La llave más alta puede ceder {} con poco caudal y {} con el consumo máximo atendido (le queda el {} y el {} % de lo deseado ahí, práctica común); la precarga está {} debajo de la presión a mantener.",
  ],
  [
    "The tank's precharge may lie above the wake pressure of {}: it is then empty before the pump starts.",
    "La precarga del tanque puede quedar arriba de la presión de despertar de {}: entonces se vacía antes de que la bomba arranque.",
  ],
  ["Set the precharge to {} with the line open.", "Ajuste la precarga a {} con la línea abierta."],
  [
    "When {} is shut off within {} the tee swings to {} to {} over {} draws, shown as up to {}; {} bounds it at {} as shown, with the sensor's errors.",
    "Cuando un consumo de {0} se cierra en {1}, la presión en la conexión del tanque alcanza en {4} sorteos de {2} a {3}, y se lee hasta {5}; por arriba queda limitada por {6}, a {7} según la lectura, con los errores del sensor.",
  ],
  ["The middle is taken.", "Se toma el punto medio."],
  ["An ordinary swing to {} leaves no room below {}.", "Una oscilación normal hasta {} no deja lugar debajo de {}."],
  [
    "A larger tank, a sensor of a larger span, parts of a higher rating, or a lower target.",
    "Un tanque mayor, un sensor de mayor alcance, piezas que aguanten más presión o una presión a mantener más baja.",
  ],
  ["The sensor fitted spans 0 to {}; another figure would falsify every pressure in proportion.", "El sensor instalado va de 0 a {}; otra cifra falsearía en proporción todas las presiones."],
  ["With no pressure the sensor reads {}; the trim takes that away.", "Sin presión el sensor marca {}; lo que se suma a la lectura lo quita."],
  ["The sensor reads nothing at no pressure: nothing to take away.", "Sin presión el sensor marca cero: no hay nada que quitar."],
  ["The zero error is known only as {} to {}, about which nothing can be set.", "El error de cero solo se conoce como intervalo, de {} a {}, y con eso no se puede ajustar nada."],
  [
    "Read the display with the line open to the air, and set the trim to that reading with its sign turned.",
    "Lea la pantalla con la línea abierta al aire y ponga esa lectura, con el signo contrario, como lo que se suma a la lectura.",
  ],
];

// Con interruptor de presión en lugar de sensor.
const switched: Forms = [
  [
    "Cut-out: {} above cut-in, as switches come or as the tank asks; at most {} % of {}, the rating of {} (common practice).",
    "Presión de paro: {} arriba de la de arranque, como vienen los interruptores o como lo pide el tanque; cuando mucho el {} % de {}, la presión admisible para {} (práctica común).",
  ],
  [
    "Cut-in at {}: the highest outlet then keeps {} % of the {} wanted there at {}, over the draws with the switch's errors {} to {}.",
    "Arranca a {}: la llave más alta conserva entonces el {} % de los {} que se desean ahí con {}; en los sorteos, con los errores del interruptor, son {} a {}.",
  ],
  [
    "For a run of a minute at {} the tank, charged to {} below cut-in, asks for a drop of {} to {} over the draws.",
    "Para una marcha de un minuto con {} el tanque, cargado a {} debajo de la presión de arranque, pide una caída de {} a {} según el sorteo.",
  ],
  ["{} leaves no room for a cut-out {} above {}.", "La presión admisible para {} no deja lugar para una presión de paro {} arriba de {}."],
  [
    "Over {} the tank gives less than a minute's run in the worst draw; short runs wear the motor and the switch.",
    "En una caída de {} el tanque da menos de un minuto de marcha en el peor sorteo; las marchas cortas desgastan el motor y el interruptor.",
  ],
  ["A tank about {} times as large, or a drive with a sensor.", "Un tanque unas {} veces más grande, o un variador con sensor."],
  ["Does not apply as a setting: without a drive the pump turns with its supply, {}.", "No se aplica como ajuste: sin variador la bomba gira con su red, {}."],
  ["Does not apply: without a drive there is one speed.", "No se aplica: sin variador hay una sola velocidad."],
  ["It would have to be {} or slower (see what bounds it), and cannot be slowed.", "Tendría que ser de {} o más lenta (vea qué la limita), y no se puede bajar."],
  [
    "What the bound names: a relief valve, parts of a higher class, a larger motor or a smaller pump end.",
    "Lo que nombra el límite: una válvula de alivio, piezas de una clase más alta, un motor mayor o un cuerpo de bomba más pequeño.",
  ],
  [
    "Does not apply while a pressure switch controls the pump; the figure is for a sensor fitted later.",
    "No se aplica mientras un interruptor de presión manda la bomba; la cifra es para un sensor que se instale después.",
  ],
  ["The switch opens at this pressure.", "El interruptor abre a esta presión."],
  ["The switch closes this far below the target.", "El interruptor cierra esto debajo de la presión a mantener."],
  ["The drive has no such setting.", "El variador no tiene este ajuste."],
];

const speeds: Forms = [
  ["The motor's service-factor amperes, {} at the least over the draws; the drive is rated {}.", "La corriente del motor con su factor de servicio, {} como mínimo en los sorteos; la nominal del variador es {}."],
  ["The drive is rated {}, less than the motor's service-factor amperes of {}.", "La corriente nominal del variador es {}, menor que la del motor con su factor de servicio, {}."],
  [
    "Not below {} for the thrust bearing (common practice), and a tenth below the lowest speed at which the pump holds the target without flow, {} over the draws: from there it is quickly back when a tap opens.",
    "No menos de {} por el cojinete de empuje (práctica común), y una décima parte debajo de la velocidad más baja a la que la bomba sostiene sin caudal la presión a mantener, {} en los sorteos: desde ahí regresa pronto cuando se abre una llave.",
  ],
  ["The least of what all allow: {}.", "El más bajo de todos los límites: {}."],
  ["Next comes: {}.", "El límite que sigue: {}."],
  ["Serving the house asks for {} in the middle draw, but {}.", "Atender la casa pide {} en el sorteo medio, pero {}."],
  ["{}, which is below what a water-lubricated thrust bearing needs.", "Hay un límite: {}; y eso es menos de lo que necesita un cojinete de empuje lubricado con agua."],
  ["What would change it: {}.", "Lo cambiaría: {}."],
  ["the drive puts out {} at most", "el variador da {} como máximo"],
  ["a drive that goes higher", "un variador que llegue más alto"],
  [
    "above {} the motor takes more than {} at the flow that loads it most (the worst draw's above {}, the middle one's above {})",
    "arriba de {} el motor toma más de {} con el caudal que más lo carga (el del peor sorteo, arriba de {}; el del sorteo medio, arriba de {})",
  ],
  ["a larger motor and drive, or a smaller pump end", "un motor y un variador mayores, o un cuerpo de bomba más pequeño"],
  ["above {} the pump asks for more than the motor's power with its service factor", "arriba de {} la bomba pide más que la potencia del motor con su factor de servicio"],
  ["a larger motor", "un motor mayor"],
  [
    "above {} the pump against a shut line exceeds {} (rated {}), and the relief valve opens at {} only",
    "arriba de {} la bomba contra una línea cerrada pasa de la presión admisible para {} ({}), y la válvula de alivio no abre hasta {}",
  ],
  [
    "above {} the pump against a shut line exceeds {} (rated {}), and no relief valve protects it",
    "arriba de {} la bomba contra una línea cerrada pasa de la presión admisible para {} ({}), y no hay válvula de alivio que proteja",
  ],
  ["a relief valve that opens below that rating and passes the pump's whole flow", "una válvula de alivio que abra debajo de esa presión y deje pasar todo el caudal de la bomba"],
  [
    "above {} the pump against a shut valve brings more than its class to {}, {} at the pump",
    "arriba de {} la bomba contra una válvula cerrada pone en {} más presión de la que admite su clase, {} a la altura de la bomba",
  ],
  ["pipe of a higher class from the pump to the tank", "tubo de una clase más alta de la bomba al tanque"],
  ["above {} the pump passes more than its curve goes", "arriba de {} la bomba deja pasar más caudal del que llega su curva"],
  ["a pump for more flow", "una bomba para más caudal"],
  [
    "At the target the pump then gives {} to {} from the water at rest, {} to {} after {} of the most it is built for.",
    "Con la presión a mantener la bomba da entonces de {} a {} con el agua en reposo, y de {} a {} después de {} con el mayor caudal para el que está hecha.",
  ],
  [
    "Taking {} of flow up or down in the {} of pipe from pump to tee at {} to {} over the draws costs {} % of the target's pressure; the lowest is taken, within {} and {}.",
    "Acelerar o frenar un caudal de {} en los {} de tubo de la bomba a la conexión del tanque cuesta, a razón de {} a {} según el sorteo, el {} % de la presión a mantener; se toma la rampa más baja, dentro de los límites de {} y {}.",
  ],
  ["At least {}, to be at the ceiling {} after the start speed.", "Al menos {}, para estar a la velocidad máxima {} después de la velocidad de arranque."],
  ["Not slower than up: what a closing tap leaves over goes into the tank.", "No más lenta que la subida: lo que sobra al cerrarse una llave entra al tanque."],
];

const regulator: Forms = [
  ["One Hz moves the pressure by {} to {} in the end, over draws, levels and flows.", "El efecto final de un Hz en la presión es de {} a {}, según el sorteo, el nivel y el caudal."],
  [
    "SIMC gives {}, held to {} so that the sensor's noise moves the speed by no more than {}, made slower to {} for the worst draw; the largest sensitivity is then {} (1.7 at most).",
    "La regla SIMC da {}, limitada a {} para que el ruido del sensor no mueva la velocidad más de {}, y reducida a {} por el peor sorteo; la mayor sensibilidad es entonces {} (1.7 como máximo).",
  ],
  [
    "SIMC gives {}, held to {} so that the sensor's noise moves the speed by no more than {}; the largest sensitivity is then {} (1.7 at most).",
    "La regla SIMC da {}, limitada a {} para que el ruido del sensor no mueva la velocidad más de {}; la mayor sensibilidad es entonces {} (1.7 como máximo).",
  ],
  [
    "SIMC gives {}, made slower to {} for the worst draw; the largest sensitivity is then {} (1.7 at most).",
    "La regla SIMC da {}, reducida a {} por el peor sorteo; la mayor sensibilidad es entonces {} (1.7 como máximo).",
  ],
  ["SIMC gives {}; the largest sensitivity is then {} (1.7 at most).", "La regla SIMC da {}; la mayor sensibilidad es entonces {} (1.7 como máximo)."],
  ["This drive's second gain is {} times as strong; the stronger of the two keeps to that.", "La segunda ganancia de este variador es {} veces la primera; la más fuerte de las dos se atiene a lo dicho."],
  [
    "The slowest draw follows in {} after a delay of up to {} (column, sensor, sampling); with this gain SIMC gives {} for it, shortened as far as the largest sensitivity allows in every draw.",
    "El sorteo más lento responde en {} tras un retardo de hasta {} (columna de agua, sensor, muestreo); con esta ganancia la regla SIMC da para él {}, acortado hasta donde la mayor sensibilidad lo permite en todos los sorteos.",
  ],
  ["Even so weak an answer keeps a sensitivity of {}.", "Aun una respuesta tan débil conserva una sensibilidad de {}."],
  ["A larger tank, a quicker sensor, or a drive that samples more often.", "Un tanque mayor, un sensor más rápido o un variador que muestree más seguido."],
  ["In no draw can the pump hold the target at any draw of water: a weak answer is set.", "En ningún sorteo puede la bomba sostener la presión a mantener, con ningún consumo: se ajusta una respuesta débil."],
  ["The target is out of reach.", "La presión a mantener no se alcanza."],
];

const sleep: Forms = [
  [
    "The pump holds the target without flow at {} to {} over the draws; fed a leak of up to {} it settles at {} to {}.",
    "La bomba sostiene sin caudal la presión a mantener con una velocidad de {} a {} según el sorteo; con una fuga de hasta {} se asienta en {} a {}.",
  ],
  [
    "Soon after a peak the water stands deeper and that is up to {}; the sleep speed lies {} above it.",
    "Poco después de un consumo máximo el agua está más honda y eso llega hasta {}; la velocidad de dormir queda {} más arriba.",
  ],
  [
    "The least draw of {} is held at {} to {}, above the sleep speed in {} of {} draws; in the others the ramp to sleep tells it from a leak.",
    "El consumo mínimo de {} se sostiene con {} a {}, arriba de la velocidad de dormir en {} de {} sorteos; en los demás la rampa para dormir lo distingue de una fuga.",
  ],
  [
    "The pump cannot hold the target against the leak at its ceiling in all draws.",
    "A su velocidad máxima la bomba no puede sostener la presión a mantener contra la fuga en todos los sorteos.",
  ],
  [
    "After waking the pressure may pass the target, which the least draw takes back in up to {}; twice the regulator's reset time is {}; from start to start {} should pass, of which the tank feeds the least draw for {}.",
    "Al despertar, la presión puede pasarse de la que hay que mantener, y el consumo mínimo la regresa en hasta {}; el doble del tiempo de integración es {}; de arranque a arranque deben pasar {}, de los que el tanque alimenta el consumo mínimo durante {}.",
  ],
  [
    "The longest of these, within {} and {}, so that a quiet house comes to rest within two minutes (common practice).",
    "El más largo de estos tiempos, dentro de los límites de {} y {}, para que una casa en silencio llegue al reposo en dos minutos (práctica común).",
  ],
  [
    "This drive nudges whenever that time has passed with the pressure held: while somebody draws the pressure dips by {} each time.",
    "Este variador tantea cada vez que pasa ese tiempo con la presión sostenida: mientras alguien consume, la presión baja {} cada vez.",
  ],
  [
    "{} % of the wake drop, and above what noise and resolution of the sensor can feign, {}.",
    "El {} % de la caída para despertar, y más de lo que pueden fingir el ruido y la resolución del sensor, {}.",
  ],
  [
    "It counts on the low side only: after a tap closes the pressure stays above the target.",
    "Cuenta solo hacia abajo: después de cerrarse una llave la presión se queda arriba de la que hay que mantener.",
  ],
  ["The sensor's noise is as large as the wake drop.", "El ruido del sensor es tan grande como la caída para despertar."],
  ["A quieter sensor.", "Un sensor con menos ruido."],
  [
    "From the zero-flow speed down to {} the tank alone feeds the leak: within the band it can as long as the ramp is {} or quicker, in every draw.",
    "De la velocidad de caudal nulo hasta {} solo el tanque alimenta la fuga: sin salirse de la banda puede hacerlo mientras la rampa sea de {} o más rápida, en todos los sorteos.",
  ],
  [
    "To be told from a leak the least draw must lose the band before the pump is off: {} or slower.",
    "Para distinguirse de una fuga, el consumo mínimo debe sacar la presión de la banda antes de que la bomba se apague: {} o más lenta.",
  ],
  [
    "No ramp does both in every draw; asleep under the least draw the tank feeds it in spells of {} or longer, which a motor bears.",
    "Ninguna rampa logra ambas cosas en todos los sorteos; si la bomba duerme con el consumo mínimo, el tanque lo alimenta en ciclos de {} o más largos, y eso lo aguanta un motor.",
  ],
  [
    "No ramp sleeps under the leak ({} or quicker) and keeps the least draw awake ({} or slower) in every draw; with this one the pump sleeps, and a small draw may be fed in spells from the tank of as little as {}.",
    "Ninguna rampa deja dormir con la fuga ({} o más rápida) y a la vez mantiene despierta la bomba con el consumo mínimo ({} o más lenta) en todos los sorteos; con esta la bomba duerme, y el tanque puede alimentar un consumo pequeño en ciclos de apenas {}.",
  ],
  [
    "Mending the leak, a larger tank, or measuring on site at which speed the flow ends (taps shut, the speed at which the pressure just holds): that narrows the sleep speed.",
    "Reparar la fuga, un tanque mayor, o medir en el sitio a qué velocidad se acaba el caudal (llaves cerradas, la velocidad a la que la presión apenas se sostiene): eso afina la velocidad de dormir.",
  ],
];

const guards: Forms = [
  [
    "At {} {} takes {} at the most and {} {} at the least over the draws; the threshold lies {}.",
    "A {} {} toma {} como máximo y {} {} como mínimo en los sorteos; el umbral queda {}.",
  ],
  ["in the middle, {} from either", "en medio, a {} de cada cifra"],
  ["where it misjudges the fewest draws, {} of {}", "donde juzga mal el menor número de sorteos, {} de {}"],
  ["below both", "debajo de ambas cifras"],
  ["a pump without water", "una bomba sin agua"],
  ["a pump against a shut line", "una bomba contra una línea cerrada"],
  ["one against a shut line", "una contra una línea cerrada"],
  ["one at work with its pressure lost", "una que trabaja con la presión perdida"],
  ["the slowest ordinary work", "el trabajo normal más lento"],
  [
    "In each draw the two are apart, but not by one figure for all: {} {} of one reaches {} of another.",
    "En cada sorteo las dos están separadas, pero no por una misma cifra para todos: con {} los {} de un sorteo alcanzan los {} de otro.",
  ],
  ["{} and {} take the same current within {}, or the other way round.", "La corriente es la misma, con menos de {2} de diferencia, o incluso queda al revés: {0} y {1}."],
  ["{} and {} take the same power within {}, or the other way round.", "La potencia es la misma, con menos de {2} de diferencia, o incluso queda al revés: {0} y {1}."],
  [
    "Reading it on site at the ceiling against a shut valve for a few seconds, and setting 0.8 of it; a plate and a pump curve in place of typical ones narrow it as well.",
    "Leerla en el sitio a la velocidad máxima contra una válvula cerrada durante unos segundos y ajustar 0.8 de ella; también la afinan una placa y una curva de bomba en lugar de las típicas.",
  ],
  [
    "Reading it on site at the ceiling, shut and with a tap wide open, and setting the middle; more head in the pump moves ordinary work further from shut.",
    "Leerla en el sitio a la velocidad máxima, con la línea cerrada y con una llave del todo abierta, y ajustar el punto medio; una bomba con más carga aleja el trabajo normal de la línea cerrada.",
  ],
  [
    "A drive whose guards look only near full speed, or a float or level probe on the permissive contact.",
    "Un variador cuyas guardas vigilen solo cerca de la velocidad máxima, o un flotador o una sonda de nivel en el contacto externo.",
  ],
  [
    "A drive whose guards look only near full speed, or a temperature switch at the well head.",
    "Un variador cuyas guardas vigilen solo cerca de la velocidad máxima, o un interruptor de temperatura en la boca del pozo.",
  ],
  ["A drive whose guards look only near full speed.", "Un variador cuyas guardas vigilen solo cerca de la velocidad máxima."],
  [
    "Both guards look only from {} up and below {}: at {} dry, shut and freely flowing differ by {} in all ({}, {}, {}), and a threshold would mean nothing.",
    "Las dos guardas vigilan solo de {} para arriba y debajo de {}: a {} en seco, cerrada y con salida libre difieren en total en {} ({}, {}, {}), y un umbral no diría nada.",
  ],
  ["This drive's guards look at any speed by one threshold.", "Las guardas de este variador vigilan a cualquier velocidad con un solo umbral."],
  [
    "At {} dry, shut and freely flowing take {}, {} and {}: what is dry at {} may be a shower there, so the threshold has to keep below work at low speed.",
    "A {} en seco, cerrada y con salida libre toma {}, {} y {}: lo que a {} es en seco puede ser ahí una ducha, así que el umbral debe quedar debajo del trabajo a baja velocidad.",
  ],
  [
    "Longer than an idle pump takes to sleep ({}), which loads its motor no more than a dry one; a bearing without water is harmed in {} (common practice).",
    "Más de lo que tarda en dormirse una bomba sin consumo ({}), que no carga su motor más que una en seco; un cojinete sin agua se daña en {} (práctica común).",
  ],
  [
    "Longer than the {} takes to settle after a start ({}), shorter than a bearing without water is harmed ({}, common practice).",
    "Más de lo que tarda {} en asentarse tras un arranque ({}), menos de lo que tarda en dañarse un cojinete sin agua ({}, práctica común).",
  ],
  ["A dry bearing is harmed before this delay is over.", "Un cojinete en seco se daña antes de que se cumpla este tiempo."],
  [
    "Longer than the {} takes to settle ({}); against a shut line the water in the pump comes to {} in {} to {}, of which no more than half, and no more than {}.",
    "Más de lo que tarda {} en asentarse ({}); contra una línea cerrada el agua dentro de la bomba llega a {} en {} a {}, y de ese tiempo se toma la mitad como mucho, y no más de {}.",
  ],
  ["filtered current", "la corriente filtrada"],
  ["filtered power", "la potencia filtrada"],
  [
    "This is the first rest; each further one before the pump has slept is {} times as long, up to {}.",
    "Este es el primer descanso; cada uno de los siguientes, mientras la bomba no haya dormido, dura {} veces el anterior, hasta {}.",
  ],
  [
    "A day at the peak draw of {} does not draw the level down to the pump in any draw; what stops it then lies elsewhere.",
    "Un día con el consumo máximo de {} no baja el nivel hasta la bomba en ningún sorteo; si algo la para, entonces es otra cosa.",
  ],
  ["{} keeps a day of retries within the starts that the motor bears.", "Con {} un día de reintentos queda dentro de los arranques que aguanta el motor."],
  [
    "Overdrawn at the peak until the pump loses its water (possible in {} of {} draws), the well gives the peak for {} again after a rest of {} in the middle draw and {} in 95 % of draws.",
    "Sobreexplotado con el consumo máximo hasta que la bomba pierde su agua (posible en {} de {} sorteos), el pozo vuelve a dar el consumo máximo durante {} después de un descanso de {} en el sorteo medio y de {} en el 95 % de los sorteos.",
  ],
  [
    "Overdrawn at the peak until the pump loses its water (possible in {} of {} draws), the well gives the peak for {} again after a rest of {} in the middle draw and no rest looked at in 95 % of draws.",
    "Sobreexplotado con el consumo máximo hasta que la bomba pierde su agua (posible en {} de {} sorteos), el pozo vuelve a dar el consumo máximo durante {} después de un descanso de {} en el sorteo medio; para el 95 % de los sorteos no basta ninguno de los descansos examinados.",
  ],
  [
    "Overdrawn at the peak until the pump loses its water (possible in {} of {} draws), the well gives the peak for {} again after a rest of no rest looked at in the middle draw and {} in 95 % of draws.",
    "Sobreexplotado con el consumo máximo hasta que la bomba pierde su agua (posible en {} de {} sorteos), el pozo vuelve a dar el consumo máximo durante {} después de un descanso de {} en el 95 % de los sorteos; en el sorteo medio no basta ninguno de los descansos examinados.",
  ],
  [
    "Overdrawn at the peak until the pump loses its water (possible in {} of {} draws), the well gives the peak for {} again after a rest of no rest looked at in the middle draw and no rest looked at in 95 % of draws.",
    "Sobreexplotado con el consumo máximo hasta que la bomba pierde su agua (posible en {} de {} sorteos), el pozo no vuelve a dar el consumo máximo durante {} con ninguno de los descansos examinados, ni en el sorteo medio ni para el 95 % de los sorteos.",
  ],
  [
    "At least {}, so that a day of retries starts the motor no oftener than it bears; to whole steps of {}.",
    "Al menos {}, para que un día de reintentos no arranque el motor más veces de las que aguanta; en pasos enteros de {}.",
  ],
  ["Within {} the well does not come back so far in 95 % of draws.", "En {} el pozo no se recupera tanto en el 95 % de los sorteos."],
  [
    "A pump set deeper, where the casing holds more, a storage tank, or knowing the yield better.",
    "Una bomba puesta más honda, donde el ademe guarda más agua, un tanque de almacenamiento, o saber mejor cuánto da el pozo.",
  ],
];

const times: Forms = [
  [
    "The longest legitimate run is {} (stated or the zones one after the other), and a seventh more is {}.",
    "La marcha legítima más larga es de {} (la que se indicó o las zonas una tras otra), y {}.",
  ],
  ["allowed", "se concede una séptima parte más"],
  ["allowed at the least", "se concede al menos una séptima parte más"],
  ["{}; a tap may be left running for {} besides (common practice)", "{}; además puede quedar abierta una llave durante {} (práctica común)"],
  [
    "A break loses up to {} in the long run; {} are allowed to be lost, which takes {} at the least, and the limit lies between.",
    "Una rotura pierde a la larga hasta {}; se permite perder {}, lo que tarda {} como mínimo, y el límite queda en medio.",
  ],
  ["A break loses up to {} in the long run; {} are allowed to be lost, which takes {} at the least.", "Una rotura pierde a la larga hasta {}; se permite perder {}, lo que tarda {} como mínimo."],
  ["A break loses up to {} in the long run; no limit to the loss was stated.", "Una rotura pierde a la larga hasta {}; no se dijo cuánto se puede perder."],
  [
    "By then {} may have run away, more than the {} allowed: a break cannot be told from the longest run by time.",
    "Para entonces pueden haberse perdido {}, más que los {} permitidos: por el tiempo no se distingue una rotura de la marcha más larga.",
  ],
  [
    "Shorter zones or irrigation in two programmes with a pause, a flow switch or leak valve of its own, or accepting the loss.",
    "Zonas más cortas o riego en dos programas con una pausa, un interruptor de flujo o una válvula contra fugas aparte, o aceptar la pérdida.",
  ],
  [
    "Lifts {} % of best-efficiency flow to the tee against {} (from half the target the line counts as full): {} to {} over the draws.",
    "Sube el {} % del caudal de mejor rendimiento hasta la conexión del tanque contra {} (desde la mitad de la presión a mantener la línea cuenta como llena): de {} a {} según el sorteo.",
  ],
  ["Below {}, from where the amps guards look.", "Debajo de {}, desde donde vigilan las guardas de corriente."],
  ["Filling asks for {} in the worst draw, too near the guards' {}.", "El llenado pide {} en el peor sorteo, demasiado cerca de los {} de las guardas."],
  ["A higher ceiling (see speed.ceiling) or a pump with more head.", "Una velocidad máxima más alta (vea speed.ceiling) o una bomba con más carga."],
  [
    "The empty line holds {} to {}; with what the tank takes up to there the fill needs {} to {} over the draws, and half as much again is allowed.",
    "En la línea vacía caben de {} a {}; con lo que toma el tanque hasta ahí, el llenado necesita de {} a {} según el sorteo, y se concede la mitad más.",
  ],
  ["Nothing outside is known to be wired.", "No se sabe de nada externo conectado."],
  ["With a level probe or a float set closed_runs: a broken wire then stops the pump.", "Con una sonda de nivel o un flotador ponga closed_runs: así un cable roto detiene la bomba."],
  ["A lamp or bell in series then acts on a stop.", "Así una lámpara o un timbre en serie actúa cuando hay un paro."],
  ["Where loss of supply has to be reported as well, wire it to open on a stop.", "Donde también haya que avisar que se fue la luz, conéctelo para que abra en un paro."],
];

export const forms: Forms = [...phrases, ...pressure, ...switched, ...speeds, ...regulator, ...sleep, ...guards, ...times, ...assumed];
