#include <QTemporaryDir>
#include <QTest>
#include <fstream>
#include <rapidcheck.h>

#include "aircraft/groundplan.h"
#include "aircraft/practice.h"
#include "twinjet.h"

using namespace flowhand;
using namespace flowhand::test;

namespace {

GroundPlan fenholt() {
    Result<GroundPlan> plan = loadGroundPlan(std::string(PROCEDURES) + "/fenholt/ground.toml");
    if (!plan)
        qFatal("%s", describe(plan.error()).c_str());
    return std::move(*plan);
}

GuideLine corner() {
    return *GuideLine::build({{0.0, 0.0}, {0.0, 100.0}, {100.0, 100.0}}, {30.0});
}

} // namespace

class TestGroundPlan : public QObject {
    Q_OBJECT

    QTemporaryDir m_folder;

    std::string fileWith(const std::string& text) {
        const std::string name = m_folder.path().toStdString() + "/ground.toml";
        std::ofstream(name) << text;
        return name;
    }

private Q_SLOTS:
    void theSceneIsAsLargeAsTheAircraft_data() {
        QTest::addColumn<QString>("folder");
        for (const char* folder : {"twin_jet", "twin_turboprop", "light_single"})
            QTest::newRow(folder) << QString(folder);
    }
    void theSceneIsAsLargeAsTheAircraft() {
        QFETCH(QString, folder);
        const Aircraft aircraft = shippedAircraft(folder.toStdString());
        const PracticeFigures figures = shippedFigures(folder.toStdString());
        const Result<PracticeAircraft> practice = PracticeAircraft::create(aircraft, "line_up");
        QVERIFY(practice);
        const GroundScene scene = practice->scene();
        QCOMPARE(scene.wheelbase, figures.wheels.wheelbase);
        QCOMPARE(scene.track, figures.wheels.track);
        QCOMPARE(scene.noseAhead, figures.body.noseAhead);
        QCOMPARE(scene.tailBehind, figures.body.tailBehind);
        QCOMPARE(scene.wingspan, figures.air.span);
        // The nosewheel of the aircraft that has lined up is on its mark, and all of it on the runway's line.
        const GroundPosition position = practice->position();
        const Route* route = scene.plan.route(position.route);
        QVERIFY(route != nullptr && position.isOnGround);
        const LinePoint mark = route->line.pointAt(route->mark("line_up")->distance);
        QVERIFY(isNear(position.heading, mark.heading, 1e-6));
        QVERIFY(isNear(position.mainWheels.x + scene.wheelbase * std::sin(position.heading), mark.at.x, 0.01));
        QVERIFY(isNear(position.mainWheels.y + scene.wheelbase * std::cos(position.heading), mark.at.y, 0.01));
    }

    void lengthOfACorner() { QVERIFY(isNear(corner().length(), 70.0 + 30.0 * 90.0 * kRadiansPerDegree + 70.0, 1e-9)); }

    void middleOfTheArc() {
        const GuideLine line = corner();
        const LinePoint middle = line.pointAt(line.length() / 2.0);
        QVERIFY(isNear(middle.heading, 45.0 * kRadiansPerDegree, 1e-9));
        QVERIFY(isNear(middle.curvature, 1.0 / 30.0, 1e-12));
        QVERIFY(isNear(std::hypot(middle.at.x - 30.0, middle.at.y - 70.0), 30.0, 1e-9));
    }

    void leftTurnsCurveTheOtherWay() {
        const GuideLine line = *GuideLine::build({{0.0, 0.0}, {0.0, 100.0}, {-100.0, 100.0}}, {30.0});
        QVERIFY(line.pointAt(80.0).curvature < 0.0);
        QVERIFY(isNear(line.pointAt(line.length()).at.x, -100.0, 1e-9));
    }

    void runsOnPastItsEnds() {
        const GuideLine line = corner();
        QVERIFY(isNear(line.pointAt(-50.0).at.y, -50.0, 1e-9));
        QVERIFY(isNear(line.pointAt(line.length() + 50.0).at.x, 150.0, 1e-9));
        QVERIFY(isNear(line.nearest({3.0, -50.0}, -45.0), -50.0, 1e-9));
    }

    void bendsOnlyAtTheArc() {
        QVERIFY(!corner().bends(0.0, 69.0));
        QVERIFY(corner().bends(0.0, 71.0));
        QVERIFY(corner().bends(100.0, 130.0));
        QVERIFY(!corner().bends(118.0, 130.0));
    }

    void arcsMustFit() {
        const Result<GuideLine> tooWide = GuideLine::build({{0.0, 0.0}, {0.0, 20.0}, {20.0, 20.0}}, {30.0});
        QVERIFY(!tooWide);
        QCOMPARE(tooWide.error().code, std::string("bad-line"));
        QVERIFY(!GuideLine::build({{0.0, 0.0}}, {}));
        QVERIFY(!GuideLine::build({{0.0, 0.0}, {0.0, 20.0}, {20.0, 20.0}}, {}));
    }

    void nearestFindsWhereItIs() {
        QVERIFY(rc::check("a point beside the line is found again", [] {
            const GuideLine line = corner();
            const double along = *rc::gen::inRange(0, 1870) / 10.0;
            const double right = *rc::gen::inRange(-150, 151) / 10.0;
            const LinePoint on = line.pointAt(along);
            const PlanPoint beside{on.at.x + right * std::cos(on.heading), on.at.y - right * std::sin(on.heading)};
            RC_ASSERT(std::fabs(line.nearest(beside, along) - along) < 1e-6);
        }));
    }

    void shippedFieldIsWhole() {
        const GroundPlan plan = fenholt();
        const Route* out = plan.route("out");
        const Route* in = plan.route("in");
        QVERIFY(out != nullptr && in != nullptr);
        for (const char* name : {"stand", "holding_point", "line_up"})
            QVERIFY2(out->mark(name) != nullptr, name);
        for (const char* name : {"threshold", "turn_off", "stand"})
            QVERIFY2(in->mark(name) != nullptr, name);
        const PlanPoint hold = out->line.pointAt(out->mark("holding_point")->distance).at;
        QVERIFY(plan.runway.distanceTo(hold) > plan.runway.clearDistance);
        QCOMPARE(out->nextStop(0.0, 10.0), out->mark("holding_point")->distance);
    }

    void runwayDistance() {
        const Runway runway{"09", {0.0, 0.0}, {2400.0, 0.0}, 45.0, 75.0};
        QVERIFY(isNear(runway.distanceTo({1200.0, 80.0}), 80.0, 1e-9));
        QVERIFY(isNear(runway.distanceTo({-30.0, 5.0}), 30.0, 1e-9));
        QVERIFY(isNear(runway.distanceTo({2450.0, -60.0}), 60.0, 1e-9));
    }

    void badFilesSayWhere_data() {
        QTest::addColumn<QString>("text");
        QTest::addColumn<QString>("code");
        QTest::addColumn<int>("line");
        const QString head = "format = 1\ntitle = \"x\"\nturn_notice = \"10 m\"\nstop_passed = \"10 m\"\n";
        const QString runway = "[runway]\nname = \"09\"\nfrom = [0, 0]\nto = [100, 0]\nwidth = \"45 m\"\n"
                               "clear_distance = \"75 m\"\n";
        QTest::newRow("no runway") << head << "missing-key" << 0;
        QTest::newRow("newer format") << QString(head).replace("= 1", "= 2") + runway << "bad-format" << 1;
        QTest::newRow("unknown unit") << QString(head).replace("10 m\"\nstop", "10 yards\"\nstop") + runway
                                      << "bad-value" << 3;
        QTest::newRow("point of one number") << QString(head + runway).replace("[100, 0]", "[100]") << "bad-point" << 8;
        QTest::newRow("unknown key") << head + runway + "lenght = 3\n"
                                     << "unknown-key" << 11;
        QTest::newRow("mark beside its route")
            << head + runway + "[[route]]\nname = \"a\"\npoints = [[0, 0], [50, 0]]\nradii = []\n" +
                   "[[route.mark]]\nname = \"m\"\nat = [20, 3]\n"
            << "bad-point" << 17;
    }
    void badFilesSayWhere() {
        QFETCH(QString, text);
        QFETCH(QString, code);
        QFETCH(int, line);
        const Result<GroundPlan> plan = loadGroundPlan(fileWith(text.toStdString()));
        QVERIFY(!plan);
        QCOMPARE(QString::fromStdString(plan.error().code), code);
        if (line > 0)
            QCOMPARE(plan.error().place.line, line);
    }
};

QTEST_APPLESS_MAIN(TestGroundPlan)
#include "test_aircraft_groundplan.moc"
