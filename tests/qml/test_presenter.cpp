#include <QQmlEngine>
#include <QtTest>
class TestPresenter : public QObject {
    Q_OBJECT
};
QTEST_MAIN(TestPresenter)
#include "test_presenter.moc"
