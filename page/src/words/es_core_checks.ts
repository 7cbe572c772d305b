// Lo que el núcleo dice que hay que saber y hacer con cada causa, lo que pide comprobar y lo que se puede responder.
import type { Forms } from "./translated";

/// Qué es cada causa y cómo lleva a un paro; después, qué hacer.
const causes: Forms = [
  [
    "The level at rest has sunk towards the pump, so that a long draw bares the intake and the dry-run guard acts.",
    "El nivel en reposo bajó hacia la bomba: un consumo largo deja la toma al descubierto y actúa la guarda de marcha en seco.",
  ],
  [
    "Measure the level at rest. Hang the pump deeper if the well is deep enough, or draw less in dry months.",
    "Mida el nivel en reposo. Cuelgue la bomba más hondo si el pozo lo permite, o consuma menos en los meses secos.",
  ],
  [
    "Less comes in than is drawn: the pump empties the casing, stops dry, and finds water again after the rest.",
    "Entra menos agua de la que se consume: la bomba vacía el ademe, para en seco y después del descanso vuelve a encontrar agua.",
  ],
  [
    "Measure the level while it pumps and after. Rehabilitate the well, store water in a tank, or draw more slowly.",
    "Mida el nivel mientras bombea y después. Rehabilite el pozo, almacene agua en un depósito, o consuma más despacio.",
  ],
  [
    "Slime or scale closes the screen: little water passes at full speed, and the motor takes too little current.",
    "La lama o el sarro cierra la rejilla: a toda velocidad pasa poca agua, y el motor toma muy poca corriente.",
  ],
  ["Pull the pump and clean the screen; find what grows there.", "Saque la bomba y limpie la rejilla; averigüe qué crece ahí."],
  [
    "A new use (lawn, pool, more people) draws more or longer than well and settings were made for.",
    "Un uso nuevo (césped, alberca, más gente) consume más, o por más tiempo, de lo que se previó para el pozo y los ajustes.",
  ],
  [
    "Ask what is new. Spread the use over the day, or store water; then derive the settings again.",
    "Pregunte qué hay de nuevo. Reparta el uso a lo largo del día, o almacene agua; luego calcule otra vez los ajustes.",
  ],
  [
    "Sand has opened the clearances: it turns faster for the same water and cannot hold the pressure.",
    "La arena abrió las holguras: la bomba gira más rápido para dar la misma agua y no puede mantener la presión.",
  ],
  [
    "Compare flow and pressure at full speed with the curve; replace the pump end.",
    "Compare con la curva el caudal y la presión a toda velocidad; cambie el cuerpo de la bomba.",
  ],
  [
    "Sand or a bearing brakes it: the motor takes too much current, or does not turn at all.",
    "La frena la arena o un cojinete: el motor toma demasiada corriente, o no gira nada.",
  ],
  [
    "Do not start it again and again. Pull it; measure the motor's windings before.",
    "No la arranque una y otra vez. Sáquela; antes mida los devanados del motor.",
  ],
  [
    "Water runs back into the well while it pumps and after: it never rests, or starts again and again.",
    "El agua se regresa al pozo mientras bombea y después: la bomba no descansa nunca, o arranca una y otra vez.",
  ],
  [
    "Listen at the casing with the valve at the tank shut; pull the pipe.",
    "Escuche en el ademe con la válvula del tanque cerrada; saque el tubo.",
  ],
  [
    "Water runs back into the well after each run, so that it starts again and again with all taps shut.",
    "El agua se regresa al pozo después de cada marcha, y por eso la bomba arranca una y otra vez con todas las llaves cerradas.",
  ],
  [
    "Shut the valve at the tank: if the pressure before it falls and that behind it stays, it is the check valve.",
    "Cierre la válvula del tanque: si la presión antes de ella baja y la de después se queda, es la válvula de retención.",
  ],
  [
    "With no cushion the pressure jumps at each tap: it starts often, swings, and may stop on high pressure.",
    "Sin colchón de aire la presión salta con cada llave: la bomba arranca a menudo, la presión oscila y puede haber un paro por presión alta.",
  ],
  [
    "Power off, drain the tank, measure its air; pump it up, or replace it if the bladder is broken.",
    "Quite la luz, vacíe el tanque y mida su aire; ínflelo, o cámbielo si la membrana está rota.",
  ],
  [
    "A cistern or a pipe leaks: it starts at night with nobody drawing, or never sleeps.",
    "Fuga la caja de un sanitario o un tubo: la bomba arranca de noche sin que nadie consuma, o no duerme nunca.",
  ],
  [
    "Watch the gauge with the valve behind the tank open and shut; look at the cisterns.",
    "Observe el manómetro con la válvula que está después del tanque abierta, y luego cerrada; revise las cajas de los sanitarios.",
  ],
  [
    "Water runs away: the pressure is lost, and the long-run or the dry-run guard stops it.",
    "El agua se escapa: se pierde la presión, y la guarda de marcha larga o la de marcha en seco para la bomba.",
  ],
  [
    "Power off. Walk the line for wet ground; shut the valve and see whether the pressure comes back.",
    "Quite la luz. Recorra la línea en busca de suelo mojado; cierre la válvula y vea si la presión vuelve.",
  ],
  ["The pump turns against a shut line while the house has no pressure.", "La bomba gira contra una línea cerrada mientras la casa no tiene presión."],
  [
    "Follow the line from the well to the tank and open what is shut. A pump that ran shut is hot: let it cool.",
    "Siga la línea del pozo al tanque y abra lo que esté cerrado. Una bomba que giró contra una línea cerrada está caliente: deje que se enfríe.",
  ],
  [
    "Ice shuts the line or the sensor's nipple in the cold hours; by day it thaws.",
    "El hielo cierra la línea o el niple del sensor en las horas frías; de día se deshace.",
  ],
  [
    "Thaw it without fire, insulate and heat it; look for cracks after.",
    "Descongélela sin fuego, aíslela y póngale calefacción; después busque grietas.",
  ],
  [
    "The supply sags under load or in the evening, below what the drive bears.",
    "La tensión de la red cae con la carga o al anochecer, por debajo de lo que aguanta el variador.",
  ],
  [
    "Measure volts at the drive while it runs; have the service, its joints and the generator looked at.",
    "Mida la tensión en el variador mientras está en marcha; haga revisar la acometida, sus conexiones y el generador.",
  ],
  [
    "The utility or a breaker interrupts it now and then; nothing is wrong at the well.",
    "La compañía eléctrica o un interruptor corta la luz de vez en cuando; en el pozo no hay nada mal.",
  ],
  [
    "Ask the neighbours and look at clocks that blink; nothing to set.",
    "Pregunte a los vecinos y fíjese en los relojes que parpadean; no hay nada que ajustar.",
  ],
  [
    "A bad splice or joint in one conductor: its current and heat rise, speed is taken away.",
    "Un empalme o una conexión en mal estado en un conductor: suben su corriente y su calor, y se quita velocidad.",
  ],
  [
    "Measure all three currents running, with a clamp around the wires. Then power off, and all three resistances; mend the splice.",
    "Mida las tres corrientes en marcha, con una pinza alrededor de los cables. Luego quite la luz y mida las tres resistencias; repare el empalme.",
  ],
  [
    "Volts are lost on the way down: the motor slips, takes more current and does not reach its speed.",
    "Se pierde tensión en el camino hacia abajo: el motor se desliza, toma más corriente y no llega a su velocidad.",
  ],
  ["Compare gauge and length with a table; replace the cable.", "Compare calibre y longitud con una tabla; cambie el cable."],
  [
    "Sun, a full cabinet or a fan that stands: the heat sink passes its limit when much is drawn.",
    "Sol, un gabinete lleno o un ventilador parado: el disipador pasa de su límite cuando se consume mucho.",
  ],
  ["Shade it, clean fins and fan, give it room.", "Póngale sombra, limpie las aletas y el ventilador, y déjele espacio."],
  [
    "The drive sees the pressure late: it overshoots, swings, and may stop on high pressure.",
    "El variador ve tarde la presión: se pasa, oscila y puede parar por presión alta.",
  ],
  [
    "Shut off and drain, take the sensor out, clean nipple and port.",
    "Apague el equipo y vacíe la línea, quite el sensor, y limpie el niple y la toma.",
  ],
  ["Its zero has drifted: true pressure is not what the drive holds.", "Su cero se desvió: la presión verdadera no es la que el variador mantiene."],
  [
    "Compare with a good gauge at two pressures; trim it, or replace it.",
    "Compárelo con un buen manómetro a dos presiones; corrija su lectura, o cámbielo.",
  ],
  ["A wet or loose joint breaks the signal for seconds at any hour.", "Una conexión mojada o floja corta la señal por segundos a cualquier hora."],
  [
    "Power off. Remake the joints, look for chafing and water in the plug.",
    "Quite la luz. Rehaga las conexiones, busque rozaduras y agua en el conector.",
  ],
  [
    "A float, flood or tank contact tells the drive to stop: by right, or because it is bad.",
    "Un contacto de flotador, de inundación o de tanque le dice al variador que pare: con razón, o porque está dañado.",
  ],
  [
    "Find what is wired there and what it says; bridge it only to test, and watch it then.",
    "Averigüe qué está conectado ahí y qué indica; puentéelo solo para probar, y entonces no deje de vigilar.",
  ],
  [
    "Set too low, it takes speed away at every larger draw and calls a starting motor overloaded.",
    "Puesto demasiado bajo, quita velocidad en cada consumo grande y da por sobrecargado un motor que arranca.",
  ],
  ["Read the motor's plate; set what the plan says.", "Lea la placa del motor; ponga lo que dice el plan."],
  [
    "The pump cannot slow down so far and still hold the pressure: a drip keeps it awake.",
    "La bomba no puede bajar tanto su velocidad y mantener todavía la presión: un goteo la mantiene despierta.",
  ],
  ["Set the sleep speed that the plan gives for this depth.", "Ponga la velocidad de dormir que da el plan para esta profundidad."],
  [
    "With the ceiling low or the thresholds high, an ordinary draw at full speed passes for a dry pump.",
    "Con la velocidad máxima baja o los umbrales altos, un consumo normal a toda velocidad pasa por una bomba en seco.",
  ],
  ["Set the thresholds and the ceiling that the plan gives.", "Ponga los umbrales y la velocidad máxima que da el plan."],
  [
    "The well has not recovered when the pump tries again: stops in chains.",
    "El pozo no se ha recuperado cuando la bomba lo intenta de nuevo: paros en cadena.",
  ],
  ["Set the rest that the plan gives for this well.", "Ponga el descanso que da el plan para este pozo."],
  [
    "Gain too high or reset too quick: the pressure swings at even draw, now and then past the limit.",
    "Ganancia demasiado alta o integración demasiado rápida: la presión oscila con un consumo parejo y de vez en cuando pasa del límite.",
  ],
  ["Set gain and reset time that the plan gives.", "Ponga la ganancia y el tiempo de integración que da el plan."],
];

/// Por la clave de la comprobación: cómo se nombra detrás de una respuesta.
const names: Forms = [
  ["read_half", "velocidad con una llave a medias"],
  ["read_amps", "corriente con una llave a medias"],
  ["read_shut", "velocidad sin consumo"],
  ["amps_shut", "corriente con la línea cerrada"],
  ["watch_gauge", "baja del manómetro con las llaves cerradas"],
  ["watch_gauge_shut", "baja del manómetro con la válvula cerrada"],
  ["compare_gauge", "presión en un buen manómetro"],
  ["volts", "tensión de la red"],
  ["heat_sink", "temperatura del disipador"],
  ["level", "profundidad del agua en reposo"],
  ["level_running", "profundidad del agua en marcha"],
  ["bucket", "caudal con cubeta y reloj"],
  ["tank_air", "aire del tanque"],
  ["three_currents", "desequilibrio de las tres corrientes"],
  ["settings", "ajustes"],
  ["walk", "recorrido de la línea"],
  ["wire", "cable del sensor"],
  ["port", "toma del sensor"],
  ["what_is_new", "uso del agua"],
  ["outages", "cortes de luz"],
  ["contact", "contacto externo"],
  ["glass", "vaso de agua"],
  ["drag", "arranque del motor"],
  ["fan", "ventilación del variador"],
];

export const forms: Forms = [
  ...causes,
  ...names.flatMap(([key, name]): Forms => [
    [`{} (${key})`, `{} (${name})`],
    [`{} (${key}), {}`, `{} (${name}), {}`],
  ]),

  // Qué hacer y cómo.
  ["Open a tap half and read the drive's speed after five minutes", "Abra una llave a medias y lea la velocidad en el variador a los cinco minutos"],
  ["About half of what the house draws at most.", "Más o menos la mitad de lo que la casa consume como máximo."],
  ["Open a tap half and read the current after five minutes", "Abra una llave a medias y lea la corriente a los cinco minutos"],
  [
    "On the drive's display or with a clamp around one conductor to the motor.",
    "En la pantalla del variador o con una pinza alrededor de un solo conductor hacia el motor.",
  ],
  ["Read the speed while it holds the pressure with nothing drawn", "Lea la velocidad mientras mantiene la presión sin consumo"],
  ["Shut the valve behind the tank and read before it goes to sleep.", "Cierre la válvula que está después del tanque y lea antes de que se duerma."],
  ["Read the current with the line shut", "Lea la corriente con la línea cerrada"],
  ["Watch the gauge for ten minutes with all taps shut", "Observe el manómetro diez minutos con todas las llaves cerradas"],
  ["Cisterns too. How far does it fall?", "También las de los sanitarios. ¿Cuánto baja?"],
  [
    "Watch the gauge for ten minutes with the valve behind the tank shut",
    "Observe el manómetro diez minutos con la válvula que está después del tanque cerrada",
  ],
  ["The gauge must sit before that valve. How far does it fall?", "El manómetro tiene que estar antes de esa válvula. ¿Cuánto baja?"],
  ["Read a good gauge at the tank with all taps shut", "Lea un buen manómetro en el tanque con todas las llaves cerradas"],
  ["Against what the drive shows at the same moment.", "Compárelo con lo que muestra el variador en el mismo momento."],
  ["Read the supply's volts at the drive while it runs", "Lea la tensión de la red en el variador mientras está en marcha"],
  [
    "Only who may open the drive; at its terminals, line to line.",
    "Solo quien tiene permitido abrir el variador; en sus bornes, entre líneas.",
  ],
  ["Read the heat sink's temperature after some running", "Lea la temperatura del disipador después de un rato en marcha"],
  ["On the drive's display.", "En la pantalla del variador."],
  ["Measure the water level at rest", "Mida el nivel del agua en reposo"],
  ["Sounder or tape, clean, after an hour without drawing.", "Con sonda o cinta, limpia, después de una hora sin consumo."],
  ["Measure the water level while it runs", "Mida el nivel del agua mientras la bomba está en marcha"],
  ["After five minutes with a tap half open.", "A los cinco minutos, con una llave a medio abrir."],
  ["Open all taps and measure what comes", "Abra todas las llaves y mida lo que sale"],
  ["Bucket and watch, after three minutes.", "Con cubeta y reloj, a los tres minutos."],
  ["Measure the air in the drained tank", "Mida el aire del tanque vaciado"],
  [
    "Power off, drain it with a tap open, then a tyre gauge on its valve.",
    "Quite la luz, vacíelo con una llave abierta y mida después en su válvula con un medidor de llantas.",
  ],
  ["Measure the currents of all three conductors", "Mida la corriente de los tres conductores"],
  [
    "Only who may open the drive; the furthest from their mean, as a share.",
    "Solo quien tiene permitido abrir el variador; la que más se aparta del promedio de las tres, como fracción.",
  ],
  ["Compare the drive's settings with those of the plan", "Compare los ajustes del variador con los del plan"],
  ["wellproof plan prints them; which one is far off?", "Los del plan los imprime wellproof plan; ¿cuál está muy lejos del suyo?"],
  ["Walk the line from well to house and look", "Recorra la línea del pozo a la casa y mire"],
  ["Every valve, and the ground above the pipe.", "Cada válvula, y el suelo encima del tubo."],
  [
    "Move the sensor's wire and plug while somebody watches the display",
    "Mueva el cable y el conector del sensor mientras alguien mira la pantalla",
  ],
  ["Take the sensor out and look into its port", "Quite el sensor y mire dentro de su toma"],
  ["Shut off and drain first.", "Antes apague el equipo y vacíe la línea."],
  ["Ask what is new in the use of water", "Pregunte qué hay de nuevo en el uso del agua"],
  ["Lawn, pool, guests, animals, a filter that rinses itself.", "Césped, alberca, visitas, animales, un filtro que se enjuaga solo."],
  ["Ask whether the power went away at these times", "Pregunte si se fue la luz a esas horas"],
  ["Clocks that blink, neighbours, the utility.", "Relojes que parpadean, los vecinos, la compañía eléctrica."],
  ["Look what is wired to the outside contact, and what it says", "Mire qué está conectado al contacto externo y qué indica"],
  ["Float, flood or tank contact.", "Contacto de flotador, de inundación o de tanque."],
  ["Let a glass of water stand", "Deje reposar un vaso de agua"],
  ["After the pump has started.", "Tómelo después de que arranque la bomba."],
  ["Ask who knows the motor: does it start hard, or hum?", "Pregunte a quien conoce el motor: ¿arranca con dificultad, o zumba?"],
  ["Never start it again and again to hear it.", "No lo arranque nunca una y otra vez para oírlo."],
  ["Look at the drive's fins, fan and place", "Mire las aletas y el ventilador del variador, y dónde está puesto"],
  ["Dust, a fan that stands, sun, a cabinet that is shut.", "Polvo, un ventilador parado, sol, un gabinete cerrado."],

  // Lo que se puede responder.
  ["lower than a sound plant", "menos que en una instalación sana"],
  ["as a sound plant", "como en una instalación sana"],
  ["higher than a sound plant", "más que en una instalación sana"],
  ["below {}", "menos de {}"],
  ["above {}", "más de {}"],
  ["less than nothing", "menos que nada"],
  ["none is far off", "ninguno está muy lejos"],
  ["the current limit is far off", "el límite de corriente está muy lejos"],
  ["the sleep speed is far off", "la velocidad de dormir está muy lejos"],
  ["thresholds or ceiling are far off", "los umbrales o la velocidad máxima están muy lejos"],
  ["the rest is far off", "el descanso está muy lejos"],
  ["gain or reset time is far off", "la ganancia o el tiempo de integración está muy lejos"],
  ["all valves open, the ground dry", "todas las válvulas abiertas y el suelo seco"],
  ["a valve is shut", "hay una válvula cerrada"],
  ["the ground is wet", "el suelo está mojado"],
  ["pipe or nipple is cold enough for ice", "el tubo o el niple está tan frío que puede tener hielo"],
  ["the pressure shown stays", "la presión mostrada se queda igual"],
  ["the pressure shown jumps", "la presión mostrada salta"],
  ["it is clear", "está limpia"], // la toma del sensor, o el agua del vaso
  ["it is plugged", "está tapada"],
  ["nothing is new", "no hay nada nuevo"],
  ["there is a new use", "hay un uso nuevo"],
  ["it did not", "no se fue"],
  ["it did", "sí se fue"],
  ["nothing, or it is closed and sound", "nada, o está cerrado y en buen estado"],
  ["it opens, or it is bad", "se abre, o está dañado"],
  ["sand settles", "se asienta arena"],
  ["it is milky with air", "está lechosa por el aire"],
  ["it starts as ever", "arranca como siempre"],
  ["it starts hard or hums", "arranca con dificultad o zumba"],
  ["clean, cool and free", "limpio, fresco y despejado"],
  ["dirty, in the sun, or the fan stands", "sucio, al sol, o con el ventilador parado"],
];
