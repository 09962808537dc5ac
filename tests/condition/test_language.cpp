#include <QtTest>

#include "cockpit.h"
#include "condition/compiler.h"
#include "condition/lexer.h"
#include "condition/parser.h"

using namespace flowhand;

class TestLanguage : public QObject {
    Q_OBJECT
private Q_SLOTS:
    void reads_data() {
        QTest::addColumn<QString>("text");
        for (const char* text : {"flap_lever == 12",
                                 "12 == flap_lever",
                                 "gear_lever == down",
                                 "gear_lever == 'down'",
                                 "flap_lever >= 12",
                                 "flap_lever == aircraft.planned_flap",
                                 "flap_lever == standby_flap_lever",
                                 "parking_brake",
                                 "parking_brake == true",
                                 "false == parking_brake",
                                 "parking_brake != taxi_light",
                                 "airspeed > ground_speed + 5 kt",
                                 "airspeed > aircraft.tiller_limit",
                                 "80kt > ground_speed",
                                 "ground_speed < 40 m/s",
                                 "tiller > -5 deg",
                                 "abs(thrust_lever_1 - thrust_lever_2) < 5 %",
                                 "min(thrust_lever_1, thrust_lever_2) > 2 * 40 %",
                                 "ground_speed / 2 s > 1 kt/s",
                                 "airspeed / ground_speed > 1.1",
                                 "turns > 3",
                                 "not parking_brake and (taxi_light or tiller < 3 deg)",
                                 "once(parking_brake)",
                                 "once(parking_brake, 5 s)",
                                 "once(parking_brake, 500 ms .. 1.5 min)",
                                 "historically(parking_brake, 2 s ..)",
                                 "since(taxi_light, parking_brake, 1 s .. 3 s)",
                                 "rise(parking_brake) or fall(taxi_light)",
                                 "held(thrust_lever_1 < 2 % and thrust_lever_2 < 2 %, 1 s)",
                                 "held(taxi_light, aircraft.settle_time)",
                                 "sequence(flap_lever == 4, flap_lever == 12, 20 s)",
                                 "moved(tiller, 10 deg) and ground_speed < aircraft.tiller_limit",
                                 "moved(tiller - 2 deg, 10 deg, taxi_light)"})
            QTest::newRow(text) << text;
    }
    void reads() {
        QFETCH(QString, text);
        Cockpit cockpit;
        QVERIFY(cockpit.compile(text.toStdString()).has_value());
        QVERIFY2(cockpit.problems.empty(), cockpit.problems.empty() ? "" : cockpit.problems[0].message.c_str());
    }

    /// The place counts bytes; what was expected, or what to do, is in the message.
    void refuses_data() {
        QTest::addColumn<QString>("text");
        QTest::addColumn<int>("offset");
        QTest::addColumn<QString>("code");
        QTest::addColumn<QString>("says");
        const auto row = [](const char* text, int offset, const char* code, const char* says) {
            QTest::newRow(text) << text << offset << code << says;
        };
        row("", 0, "syntax", "empty");
        row("ground_speed < 80 deg", 15, "wrong-unit", "kt (or m/s");
        row("ground_speed < 80", 15, "missing-unit", "'80 kt'");
        row("ground_speed < 80 knots", 18, "syntax", "'knots' is not a unit");
        row("turns < 80 kt", 8, "wrong-unit", "plain number");
        row("grund_speed < 8 kt", 0, "unknown-name", "'ground_speed'?");
        row("airspeed > tiller_limit", 11, "unknown-name", "'aircraft.tiller_limit'?");
        row("airspeed > aircraft.tiler_limit", 11, "unknown-name", "'tiller_limit'?");
        row("airspeed > aircraft.planned_flap", 11, "wrong-type", "not a number");
        row("flap_lever == 13", 14, "unknown-position", "up, 4, 12, 22, 34");
        row("gear_lever == dwn", 14, "unknown-position", "'down'?");
        row("flap_lever == 12 deg", 14, "wrong-type", "not a position");
        row("flap_lever == aircraft.tiller_limit", 14, "wrong-type", "not a position");
        row("flap_lever == gear_lever", 14, "wrong-type", "different positions");
        row("flap_lever", 0, "wrong-type", "flap_lever == up");
        row("ground_speed", 0, "wrong-type", "ground_speed < 10 kt");
        row("abs(tiller)", 0, "wrong-type", "compare");
        row("parking_brake < true", 0, "wrong-type", "no order");
        row("parking_brake == 1", 17, "wrong-type", "true or false");
        row("parking_brake + 1 > 2", 0, "wrong-type", "on or off");
        row("airspeed > 10 kt < 20 kt", 17, "syntax", "chained");
        row("airspeed = 10 kt", 9, "syntax", "'=='");
        row("taxi_light && parking_brake", 11, "syntax", "'and'");
        row("(taxi_light", 11, "syntax", "')'");
        row("taxi_light parking_brake", 11, "syntax", "'and', 'or'");
        row("gear_lever == 'down", 14, "syntax", "never closed");
        row("onec(taxi_light)", 0, "unknown-function", "'once'?");
        row("once(taxi_light, 3 s .. 1 s)", 17, "bad-window", "before it begins");
        row("once(taxi_light, 3)", 17, "bad-window", "'2 s'");
        row("once(taxi_light, 3 kt)", 17, "bad-window", "'2 s'");
        row("once(taxi_light, 200000 h)", 17, "bad-window", "too long");
        row("held(taxi_light)", 0, "wrong-arguments", "held(A, 2 s)");
        row("rise(taxi_light, 2 s)", 0, "wrong-arguments", "rise(A)");
        row("sequence(taxi_light, parking_brake, 0 s)", 36, "bad-window", "more than 0 s");
        row("moved(tiller, 10 kt)", 14, "wrong-unit", "deg");
        row("moved(tiller, tiller)", 14, "wrong-type", "must not depend");
        row("moved(taxi_light, 10 deg)", 6, "wrong-type", "on or off");
        row("moved(tiller, -1 deg)", 14, "bad-number", "not be negative");
        row("airspeed > 5 kt / 0", 11, "bad-number", "divides by 0");
        row("80 < 90 kt and ground_spee > 3 kt", 5, "wrong-unit", "plain number");
        row("taxi_light \x01", 11, "syntax", "no meaning");
    }
    void refuses() {
        QFETCH(QString, text);
        QFETCH(int, offset);
        QFETCH(QString, code);
        QFETCH(QString, says);
        Cockpit cockpit;
        QVERIFY(!cockpit.compile(text.toStdString()).has_value());
        const ConditionProblem& problem = cockpit.problems.at(0);
        QVERIFY(!problem.isWarning);
        QCOMPARE(QString::fromStdString(problem.code), code);
        QCOMPARE(static_cast<int>(problem.offset), offset);
        QVERIFY2(problem.message.find(says.toStdString()) != std::string::npos, problem.message.c_str());
    }

    void tellsEveryWrongName() {
        Cockpit cockpit;
        QVERIFY(!cockpit.compile("taxi_ligt and (parking_brak or tiller < 5 kt)"));
        QCOMPARE(cockpit.problems.size(), std::size_t{3});
    }

    void refusesWhatIsTooLongOrTooDeep() {
        Cockpit cockpit;
        const auto nested = [](int depth) {
            return std::string(static_cast<std::size_t>(depth), '(') + "taxi_light" +
                   std::string(static_cast<std::size_t>(depth), ')');
        };
        QVERIFY(cockpit.compile(nested(kDeepestNesting)));
        QVERIFY(!cockpit.compile(nested(kDeepestNesting + 1)));
        QCOMPARE(cockpit.problems[0].code, std::string("too-deep"));
        std::string negations;
        for (int i = 0; i < 100; ++i)
            negations += "not ";
        QVERIFY(!cockpit.compile(negations + "taxi_light"));
        QVERIFY(!cockpit.compile("turns > " + std::string(100, '-') + "1"));
        std::string sum = "turns";
        for (int i = 0; i < 60; ++i)
            sum = "(turns + " + sum + ")";
        QVERIFY(cockpit.compile(sum + " > 1"));
        std::string chain = "taxi_light";
        while (chain.size() + 14 < kLongestCondition)
            chain += " or taxi_light";
        QVERIFY(cockpit.compile(chain));
        QVERIFY(!cockpit.compile(chain + " or taxi_light or taxi_light"));
        QCOMPARE(cockpit.problems[0].code, std::string("too-long"));
    }

    void warns_data() {
        QTest::addColumn<QString>("text");
        QTest::addColumn<QString>("code");
        const auto row = [](const char* text, const char* code) {
            QTest::newRow(text) << text << code;
        };
        row("ground_speed < 0 kt", "constant-condition");
        row("ground_speed >= 0 kt and taxi_light", "constant-condition");
        row("tiller < 5 deg and tiller > 10 deg", "constant-condition");
        row("tiller < 5 deg and tiller > 4 deg", "");
        row("gear_lever == up or gear_lever != up", "constant-condition");
        row("gear_lever == up or gear_lever == down", "");
        row("turns > 100000000000000000000000", "");
        row("true", "constant-condition");
        row("once(taxi_light and not taxi_light)", "constant-condition");
        row("since(not taxi_light, taxi_light)", "exclusive-operands");
        row("since(ground_speed > 30 kt, ground_speed < 10 kt, 5 s)", "exclusive-operands");
        row("since(not taxi_light, fall(taxi_light))", "");
        row("since(ground_speed > 30 kt, ground_speed < 40 kt)", "");
        row("held(rise(taxi_light), 1 s)", "instant-held");
        row("held(rise(taxi_light), 0 s)", "");
    }
    void warns() {
        QFETCH(QString, text);
        QFETCH(QString, code);
        Cockpit cockpit;
        QVERIFY(cockpit.compile(text.toStdString()));
        QCOMPARE(cockpit.problems.size(), std::size_t(code.isEmpty() ? 0 : 1));
        if (!code.isEmpty()) {
            QVERIFY(cockpit.problems[0].isWarning);
            QCOMPARE(QString::fromStdString(cockpit.problems[0].code), code);
        }
    }

    void saysWhatKindOfConditionItIs() {
        Cockpit cockpit;
        QVERIFY(cockpit.condition("rise(taxi_light) and parking_brake").isInstant());
        QVERIFY(cockpit.condition("sequence(taxi_light, parking_brake, 2 s)").isInstant());
        QVERIFY(cockpit.condition("rise(taxi_light) or fall(taxi_light)").isInstant());
        QVERIFY(!cockpit.condition("rise(taxi_light) or parking_brake").isInstant());
        QVERIFY(!cockpit.condition("once(rise(taxi_light))").isInstant());
        QVERIFY(!cockpit.condition("not rise(taxi_light)").isInstant());
        QVERIFY(cockpit.condition("once(held(taxi_light, 1 s))").usesReference());
        QVERIFY(cockpit.condition("moved(tiller, 1 deg)").usesReference());
        QVERIFY(!cockpit.condition("moved(tiller, 1 deg, taxi_light)").usesReference());
        QVERIFY(cockpit.condition("taxi_light and moved(tiller, 1 deg)").hasOpenMoved());
        QVERIFY(!cockpit.condition("moved(tiller, 1 deg, taxi_light)").hasOpenMoved());
        const Condition condition = cockpit.condition("tiller < 1 deg and once(taxi_light, 3 s ..) and abs(airspeed - "
                                                      "ground_speed) < 5 kt and held(tiller > 0 deg, 7 s)");
        QCOMPARE(condition.signals(),
                 (std::vector<SignalId>{cockpit.tiller, cockpit.light, cockpit.airspeed, cockpit.speed}));
        QVERIFY(condition.longestWindow().length == std::chrono::seconds(7));
        QVERIFY(condition.longestWindow().isHeld);
        QCOMPARE(condition.text().substr(condition.longestWindow().offset, 5), std::string("held("));
        QVERIFY(cockpit.condition("taxi_light").longestWindow().length == Duration::zero());
    }

    void fits_data() {
        QTest::addColumn<QString>("text");
        QTest::addColumn<int>("position"); // of the flap lever, which has settled; -1 between
        QTest::addColumn<bool>("fits");
        const auto row = [](const char* text, int position, bool fits) {
            QTest::addRow("%s at %d", text, position) << text << position << fits;
        };
        row("flap_lever == 12", 2, true);
        row("flap_lever == 12", 1, false);
        row("flap_lever == 12", -1, false);
        row("flap_lever == 12 and airspeed < 180 kt", 2, true); // too fast, but the lever is where it should be
        row("flap_lever == 12 and airspeed < 180 kt", 1, false);
        row("taxi_light", 1, true);
        row("flap_lever == 12 or taxi_light", 1, true);
        row("not (flap_lever == 12)", 2, false);
        row("not (flap_lever == 12 and taxi_light)", 2, true);
        row("held(flap_lever == 12, 5 s)", 2, true);
        row("held(flap_lever == 12, 5 s)", 1, false);
        row("once(flap_lever == 12, 5 s)", 1, false);
        row("since(flap_lever >= 4, parking_brake)", 0, false);
        row("since(flap_lever >= 4, parking_brake)", 1, true);
        row("rise(flap_lever == 12)", 2, true);
        row("fall(flap_lever == 12)", 2, false);
        row("sequence(flap_lever == 4, flap_lever == 12, 20 s)", 1, true);
        row("sequence(flap_lever == 4, flap_lever == 12, 20 s)", 2, true);
        row("sequence(flap_lever == 4, flap_lever == 12, 20 s)", 3, false);
        row("moved(tiller, 10 deg) and flap_lever == 12", 2, true);
        row("moved(tiller, 10 deg, flap_lever == 12)", 1, false);
        row("flap_lever == standby_flap_lever", 4, true); // stands at 34
        row("flap_lever == standby_flap_lever", 2, false);
        row("flap_lever <= 34 and false", 2, false);
    }
    void fits() {
        QFETCH(QString, text);
        QFETCH(int, position);
        QFETCH(bool, fits);
        Cockpit cockpit;
        std::vector<Value> others(cockpit.table.size());
        others[indexOf(cockpit.airspeed)] = Value::number(250);
        others[indexOf(cockpit.light)] = Value::onOff(false);
        others[indexOf(cockpit.secondFlap)] = Value::position(4);
        const Condition condition = cockpit.condition(text.toStdString());
        QCOMPARE(condition.fits(cockpit.flap, position < 0 ? Value::between() : Value::position(position), others),
                 fits);
    }

    void fitsWhileOthersAreUnknown() {
        Cockpit cockpit;
        const Condition condition = cockpit.condition("abs(thrust_lever_1 - thrust_lever_2) < 5 %");
        std::vector<Value> others(cockpit.table.size());
        QVERIFY(condition.fits(cockpit.lever1, Value::number(40), others));
        others[indexOf(cockpit.lever2)] = Value::number(50);
        QVERIFY(!condition.fits(cockpit.lever1, Value::number(40), others));
        QVERIFY(condition.fits(cockpit.lever1, Value::number(48), others));
    }

    void holdsNow_data() {
        QTest::addColumn<QString>("text");
        QTest::addColumn<int>("truth");
        const auto row = [](const char* text, Truth truth) {
            QTest::newRow(text) << text << static_cast<int>(truth);
        };
        row("flap_lever == 12", Truth::True);
        row("held(flap_lever == 12, 5 s)", Truth::True);
        row("once(flap_lever == 4)", Truth::False);
        row("historically(flap_lever == 12)", Truth::True);
        row("since(flap_lever == 12, taxi_light)", Truth::False);
        row("rise(flap_lever == 12)", Truth::False);
        row("sequence(flap_lever == 4, flap_lever == 12, 2 s)", Truth::False);
        row("moved(tiller, 1 deg)", Truth::False);
        row("moved(tiller, 1 deg) or flap_lever == 12", Truth::True);
        row("airspeed > 30 kt", Truth::Unknown);
        row("airspeed > 30 kt and taxi_light", Truth::False);
        row("airspeed > 30 kt or flap_lever == 12", Truth::True);
    }
    void holdsNow() {
        QFETCH(QString, text);
        QFETCH(int, truth);
        Cockpit cockpit;
        std::vector<Value> values(cockpit.table.size());
        values[indexOf(cockpit.flap)] = Value::position(2);
        values[indexOf(cockpit.light)] = Value::onOff(false);
        QCOMPARE(static_cast<int>(cockpit.condition(text.toStdString()).holdsNow(values)), truth);
    }
};

QTEST_APPLESS_MAIN(TestLanguage)
#include "test_language.moc"
